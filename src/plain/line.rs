//! Lines in.

use std::io::{self, BufRead, Read};

use rustix::event::{PollFd, PollFlags, Timespec, poll};

/// Bytes of a line that are looked at; the rest of it is read and dropped.
const LONGEST: u64 = 4096;

/// The next line without its end; none at the end of the input. What is no UTF-8 in it shows as replacement characters.
pub fn read(input: &mut impl BufRead) -> io::Result<Option<String>> {
    let mut bytes = Vec::new();
    if input.by_ref().take(LONGEST).read_until(b'\n', &mut bytes)? == 0 {
        return Ok(None);
    }
    if bytes.last() != Some(&b'\n') {
        skip_line(input)?;
    }
    let text = String::from_utf8_lossy(&bytes);
    Ok(Some(text.trim().to_owned()))
}

fn skip_line(input: &mut impl BufRead) -> io::Result<()> {
    loop {
        let held = input.fill_buf()?;
        let end = held.iter().position(|byte| *byte == b'\n');
        let used = end.map_or(held.len(), |end| end + 1);
        input.consume(used);
        if end.is_some() || used == 0 {
            return Ok(());
        }
    }
}

/// Whether a line is waiting on standard input already: to be given as
/// [`Options::early`](super::Options::early) where standard input is a terminal.
pub fn typed_ahead() -> bool {
    let stdin = io::stdin();
    let mut fds = [PollFd::new(&stdin, PollFlags::IN)];
    let now = Timespec {
        tv_sec: 0,
        tv_nsec: 0,
    };
    poll(&mut fds, Some(&now)).is_ok() && fds[0].revents() == PollFlags::IN
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_line_without_end_is_cut_and_the_next_one_read() {
        let long = format!("{}\r\nnext", "x".repeat(10_000));
        let mut input = long.as_bytes();
        assert_eq!(read(&mut input).unwrap().map(|line| line.len()), Some(4096));
        assert_eq!(read(&mut input).unwrap().as_deref(), Some("next"));
        assert_eq!(read(&mut input).unwrap(), None);
    }

    #[test]
    fn what_is_no_text_does_not_end_the_call() {
        assert_eq!(read(&mut &b"\x9b5\n"[..]).unwrap().as_deref(), Some("\u{fffd}5"));
    }
}
