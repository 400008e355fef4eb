//! The libraries that sessions were walked with.

use std::fs;

use proofwalk::source::{Files, Layer, SourceFile};
use proofwalk::store::{Hash, StoreError, library_hash};

use crate::support::{Scene, scene};

fn library() -> (Vec<SourceFile>, Hash) {
    let files = vec![
        SourceFile::new("library.yaml", "library: sump-pump\n"),
        SourceFile::new("trees/no-heat.yaml", "title: \"no heat, °F\"\n"),
    ];
    let hash = library_hash(&files);
    (files, hash)
}

fn file(scene: &Scene, hash: &Hash) -> std::path::PathBuf {
    scene.path(&format!("libraries/{hash}.json"))
}

#[test]
fn a_kept_library_is_given_back_as_it_was() {
    let scene = scene();
    let (files, hash) = library();
    assert_eq!(scene.folder.kept_library(&hash).unwrap(), None);
    let other_way_round = [files[1].clone(), files[0].clone()];
    scene.folder.keep_library(&hash, &other_way_round).unwrap();
    assert_eq!(scene.folder.kept_library(&hash).unwrap(), Some(files));
    assert_eq!(scene.folder.kept_library(&Hash::ZERO).unwrap(), None);
    assert_eq!(
        fs::read_dir(scene.path("libraries")).unwrap().count(),
        1,
        "nothing else is left there"
    );
    assert!(scene.folder.list().unwrap().is_empty());
}

#[test]
fn an_overlay_is_kept_with_its_library_from_whatever_folder_it_came() {
    let scene = scene();
    let (base, alone) = library();
    let laid_from = |folder: &str| {
        let over = SourceFile::new("library.yaml", "title: Ours\n").in_layer(Layer::overlay(1, folder));
        [base.clone(), vec![over]].concat()
    };
    let files = laid_from("company");
    let hash = library_hash(&files);
    assert_eq!(library_hash(&laid_from("/srv/company")), hash);
    assert_ne!(hash, alone);
    scene.folder.keep_library(&hash, &files).unwrap();
    let kept = Files::new(scene.folder.kept_library(&hash).unwrap().unwrap());
    let layers: Vec<_> = (kept.iter())
        .map(|(_, file)| (file.layer().number(), file.name(), file.text()))
        .collect();
    assert_eq!(
        layers,
        [
            (0, "library.yaml", base[0].text()),
            (0, "trees/no-heat.yaml", base[1].text()),
            (1, "library.yaml", "title: Ours\n")
        ]
    );
}

#[test]
fn a_library_is_written_once() {
    let scene = scene();
    let (files, hash) = library();
    scene.folder.keep_library(&hash, &files).unwrap();
    let written = || fs::metadata(file(&scene, &hash)).unwrap().modified().unwrap();
    let first = written();
    scene.folder.keep_library(&hash, &files).unwrap();
    assert_eq!(written(), first);
}

#[test]
fn an_altered_library_is_told_and_mended_by_keeping_it_again() {
    let scene = scene();
    let (files, hash) = library();
    scene.folder.keep_library(&hash, &files).unwrap();
    let path = file(&scene, &hash);
    let text = fs::read_to_string(&path).unwrap();
    for altered in [
        text.replace("no heat", "no hest"),
        text.replace("{\"library.yaml\"", "{\"library.yaml\":\"\",\"library.yaml\""),
        text[..20].to_owned(),
        "[]".to_owned(),
    ] {
        assert_ne!(altered, text);
        fs::write(&path, altered).unwrap();
        let error = scene.folder.kept_library(&hash).unwrap_err();
        assert!(matches!(error, StoreError::LibraryAltered { .. }), "{error}");
        assert_eq!(error.exit_code(), 1);
    }
    scene.folder.keep_library(&hash, &files).unwrap();
    assert_eq!(scene.folder.kept_library(&hash).unwrap(), Some(files));
}

#[test]
fn a_library_is_kept_under_no_other_sum_than_its_own() {
    let scene = scene();
    let (mut files, _) = library();
    let error = scene.folder.keep_library(&Hash::ZERO, &files).unwrap_err();
    assert_eq!(error.exit_code(), 3);
    files.push(files[0].clone());
    let twice = library_hash(&files);
    assert!(scene.folder.keep_library(&twice, &files).is_err());
    assert_eq!(fs::read_dir(scene.folder.path()).unwrap().count(), 0);
}
