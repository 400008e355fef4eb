//! The file that a pack is written to, as the writer of ZIP files sees it.

use std::fs::File;
use std::io::{self, BufWriter, ErrorKind, Seek, SeekFrom, Write};

/// A file that fails once.
///
/// The crate's writer of ZIP files ends its file when it is dropped, also after the disk refused, and prints on standard error where
/// that fails, too. So what comes after the first failure goes nowhere, and seems to succeed; [`close`](Self::close) fails then.
#[derive(Debug)]
pub(super) struct Target<W: Write> {
    file: W,
    at: u64,
    end: u64,
    has_failed: bool,
}

impl<'f> Target<BufWriter<&'f File>> {
    /// An empty file.
    pub fn new(file: &'f File) -> Self {
        Self::of(BufWriter::new(file))
    }
}

impl<W: Write + Seek> Target<W> {
    fn of(file: W) -> Self {
        Self {
            file,
            at: 0,
            end: 0,
            has_failed: false,
        }
    }

    /// Hands over what waits to be written.
    ///
    /// # Errors
    ///
    /// Where that fails, or something failed before.
    pub fn close(mut self) -> io::Result<()> {
        match self.has_failed {
            true => Err(io::Error::other("an earlier write had failed")),
            false => self.file.flush(),
        }
    }

    fn noted<T>(&mut self, result: io::Result<T>) -> io::Result<T> {
        // What was only interrupted is tried again.
        let is_final = |error: &io::Error| error.kind() != ErrorKind::Interrupted;
        self.has_failed |= result.as_ref().err().is_some_and(is_final);
        result
    }
}

impl<W: Write + Seek> Write for Target<W> {
    fn write(&mut self, bytes: &[u8]) -> io::Result<usize> {
        let written = match self.has_failed {
            true => bytes.len(),
            false => {
                let written = self.file.write(bytes);
                self.noted(written)?
            }
        };
        self.at += written as u64;
        self.end = self.end.max(self.at);
        Ok(written)
    }

    fn flush(&mut self) -> io::Result<()> {
        match self.has_failed {
            true => Ok(()),
            false => {
                let flushed = self.file.flush();
                self.noted(flushed)
            }
        }
    }
}

impl<W: Write + Seek> Seek for Target<W> {
    fn seek(&mut self, to: SeekFrom) -> io::Result<u64> {
        self.at = match self.has_failed {
            false => {
                let at = self.file.seek(to);
                self.noted(at)?
            }
            true => {
                let (from, by) = match to {
                    SeekFrom::Start(at) => (at, 0),
                    SeekFrom::Current(by) => (self.at, by),
                    SeekFrom::End(by) => (self.end, by),
                };
                from.checked_add_signed(by).ok_or(ErrorKind::InvalidInput)?
            }
        };
        Ok(self.at)
    }
}

#[cfg(test)]
mod tests {
    use std::io::Cursor;

    use zip::ZipWriter;
    use zip::write::SimpleFileOptions;

    use super::*;

    /// A disk with so much room.
    struct Disk {
        file: Cursor<Vec<u8>>,
        room: u64,
    }

    impl Write for Disk {
        fn write(&mut self, bytes: &[u8]) -> io::Result<usize> {
            match self.file.position() + bytes.len() as u64 > self.room {
                true => Err(ErrorKind::StorageFull.into()),
                false => self.file.write(bytes),
            }
        }

        fn flush(&mut self) -> io::Result<()> {
            Ok(())
        }
    }

    impl Seek for Disk {
        fn seek(&mut self, to: SeekFrom) -> io::Result<u64> {
            self.file.seek(to)
        }
    }

    fn zip(room: u64) -> (ZipWriter<Target<Disk>>, io::Result<()>) {
        let file = Cursor::new(Vec::new());
        let mut zip = ZipWriter::new(Target::of(Disk { file, room }));
        let written = (0..3_u8).try_for_each(|number| {
            zip.start_file(number.to_string(), SimpleFileOptions::default())?;
            zip.write_all(&[number; 500])
        });
        (zip, written)
    }

    #[test]
    fn wherever_the_disk_is_full_a_pack_can_be_ended_and_fails_to_close() {
        let (whole, written) = zip(u64::MAX);
        assert!(written.is_ok());
        let whole = whole.finish().unwrap();
        let size = whole.end;
        assert!(whole.close().is_ok());
        let mut at_the_end = 0;
        for room in 0..size {
            let (zip, written) = zip(room);
            match zip.finish() {
                // Dropping does the same, and would print what fails.
                Ok(target) => assert!(written.is_err() && target.close().is_err(), "{room} of {size}"),
                Err(_) if written.is_ok() => at_the_end += 1,
                // Such a one is not ended when it is dropped.
                Err(error) => assert!(error.to_string().contains("was already closed"), "{error}"),
            }
        }
        assert!(0 < at_the_end && at_the_end < size);
    }
}
