//! What stands in the place of a session folder or a session file.

use std::fmt;

/// What is wrong with a session folder.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum FolderFault {
    /// It is a symbolic link, which others could turn elsewhere.
    Symlink,
    /// It is no folder.
    NotAFolder,
    /// Everyone may write to it, and remove what others wrote.
    WorldWritable,
}

/// What stands in the place of a session file.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum FileFault {
    /// A symbolic link.
    Symlink,
    /// A folder.
    Folder,
    /// A named pipe.
    Pipe,
    /// A socket.
    Socket,
    /// A device, or another kind of special file.
    Device,
    /// A file with a second name, which may be another's record.
    HardLink,
    /// A file of another user.
    OtherOwner,
}

impl fmt::Display for FolderFault {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::Symlink => "this folder is a symbolic link; name the folder that it leads to",
            Self::NotAFolder => "this is no folder; name a folder for the sessions",
            Self::WorldWritable => {
                "everyone may remove what is in this folder; take that right away (chmod o-w), or set the sticky bit (chmod +t)"
            }
        })
    }
}

impl fmt::Display for FileFault {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let what = match self {
            Self::Symlink => "a symbolic link",
            Self::Folder => "a folder",
            Self::Pipe => "a named pipe",
            Self::Socket => "a socket",
            Self::Device => "a device",
            Self::HardLink => {
                return f.write_str("this file has a second name, and may be another record; remove the one name, or copy the file");
            }
            Self::OtherOwner => {
                return f.write_str("this session belongs to another user; only its owner can take it up");
            }
        };
        write!(
            f,
            "{what} stands where a regular file should; nothing was read or written; remove it"
        )
    }
}
