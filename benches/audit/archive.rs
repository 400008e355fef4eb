//! Archives made to measure: session files in a folder a month, the same in packs, and the same as plain lines for others.

use std::fs::{self, File};
use std::io::{self, BufWriter, Write};
use std::path::{Path, PathBuf};

use proofwalk::bench::dice::Dice;
use proofwalk::source::SourceFile;
use proofwalk::store::{Hash, PACK_ENDING, SessionFolder, SessionId};
use proofwalk::walk::LibraryMark;
use rayon::prelude::*;
use zip::ZipWriter;
use zip::write::SimpleFileOptions;

use crate::calls::told;
use crate::plan::{Visit, visits};

/// When the last call of an archive may be opened.
const END: &str = "2025-12-30T23:59:59Z";

/// The library that made calls were walked with, in name.
pub struct Walked {
    pub files: Vec<SourceFile>,
    pub hash: Hash,
    pub mark: LibraryMark,
}

/// Calls as files of their own, in a folder a month; how many bytes they are.
pub fn loose(at: &Path, calls: usize, walked: &Walked) -> u64 {
    keep(at, walked);
    let visits = visits(calls);
    let months = by_month(&visits).into_par_iter().map(|(month, visits)| {
        let folder = at.join(month);
        fs::create_dir(&folder)?;
        visits.iter().try_fold(0, |bytes, visit| {
            let (id, text) = session(visit, walked);
            fs::write(folder.join(format!("{id}.jsonl")), &text)?;
            Ok::<u64, io::Error>(bytes + text.len() as u64)
        })
    });
    months.sum::<io::Result<u64>>().expect("files can be written")
}

/// One more call, opened as the last second of the archive begins, in a file of its own; where that is.
pub fn one_more(at: &Path, walked: &Walked) -> PathBuf {
    let visit = Visit {
        opened: END.parse().expect("it is a time"),
        equipment: 0,
        complaint: 0,
        crew: 2,
        seed: 1,
    };
    let (id, text) = session(&visit, walked);
    let path = at.join(format!("{id}.jsonl"));
    fs::write(&path, text).expect("files can be written");
    path
}

/// The same calls in packs, one a month; and as plain lines, each with its session, one file a month.
pub fn packed(at: &Path, lines: &Path, calls: usize, walked: &Walked) {
    keep(at, walked);
    fs::create_dir_all(lines).expect("a folder can be made");
    let visits = visits(calls);
    let months = by_month(&visits).into_par_iter().map(|(month, visits)| {
        let mut pack = ZipWriter::new(BufWriter::new(File::create(
            at.join(format!("{month}{PACK_ENDING}")),
        )?));
        let mut plain = BufWriter::new(File::create(lines.join(format!("{month}.jsonl")))?);
        // A million calls are packed in minutes so, and not much larger.
        let quickly = SimpleFileOptions::default().compression_level(Some(1));
        for visit in visits {
            let (id, text) = session(visit, walked);
            pack.start_file(format!("{id}.jsonl"), quickly)?;
            pack.write_all(text.as_bytes())?;
            for line in text.lines() {
                writeln!(plain, "{{\"session\":\"{id}\",{}", &line[1..])?;
            }
        }
        pack.finish()?.flush()?;
        plain.flush()
    });
    months.collect::<io::Result<()>>().expect("packs can be written");
}

fn keep(at: &Path, walked: &Walked) {
    let folder = SessionFolder::open(at).expect("a folder can be made");
    folder
        .keep_library(&walked.hash, &walked.files)
        .expect("a library can be kept");
}

fn by_month(visits: &[Visit]) -> Vec<(String, &[Visit])> {
    let month = |visit: &Visit| visit.opened.strftime("%Y-%m").to_string();
    let months = visits.chunk_by(|one, other| month(one) == month(other));
    months.map(|visits| (month(&visits[0]), visits)).collect()
}

/// A session's id and text, as the program writes it.
fn session(visit: &Visit, walked: &Walked) -> (SessionId, String) {
    let mut dice = Dice::of(&[visit.seed, 1]);
    let mut random = [0; 10];
    random.fill_with(|| dice.below(256) as u8);
    let mut text = String::with_capacity(4096);
    let mut prev = Hash::ZERO;
    for (seq, (time, event)) in told(&walked.mark, visit).into_iter().enumerate() {
        let format = if seq == 0 { "\"format\":1," } else { "" };
        let body =
            format!("{{\"seq\":{seq},{format}\"time\":\"{time}\",\"prev\":\"{prev}\",\"event\":{event}");
        let line = format!("{body},\"sum\":\"{}\"}}", Hash::of(body.as_bytes()));
        prev = Hash::of(line.as_bytes());
        text += &line;
        text.push('\n');
    }
    (SessionId::new(visit.opened, random), text)
}
