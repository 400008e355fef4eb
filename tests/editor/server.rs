//! A YAML language server, spoken to as an editor does: JSON-RPC over its standard streams.

use std::collections::BTreeMap;
use std::io::{BufRead, BufReader, Write};
use std::path::{Path, PathBuf};
use std::process::{Child, ChildStdin, Command, Stdio};
use std::sync::mpsc::{Receiver, channel};
use std::time::Duration;

use serde_json::{Value, json};

use crate::tools::tool;

/// How long an answer may take on a busy machine.
const PATIENCE: Duration = Duration::from_secs(60);

/// A server with its answers.
pub struct Server {
    child: Child,
    input: ChildStdin,
    messages: Receiver<Value>,
    requests: u64,
    diagnostics: BTreeMap<String, Value>,
}

impl Server {
    /// Starts the server; none where it is missing and tests may be skipped for that.
    pub fn start() -> Option<Self> {
        let node = tool("node")?;
        let folder = Path::new(env!("CARGO_TARGET_TMPDIR")).join("editor");
        let program = folder.join("node_modules/yaml-language-server/bin/yaml-language-server");
        if !program.is_file() {
            let how = "copy tests/editor/package*.json to target/tmp/editor and run `npm ci` there, as .ci/run does";
            assert!(
                std::env::var_os("PROOFWALK_NO_SKIP").is_none(),
                "yaml-language-server is not installed: {how}"
            );
            eprintln!("skipped: yaml-language-server is not installed: {how}");
            return None;
        }
        let mut child = Command::new(node)
            .arg(program)
            .arg("--stdio")
            .stdin(Stdio::piped())
            .stdout(Stdio::piped())
            .stderr(Stdio::null())
            .spawn()
            .unwrap();
        let (input, output) = (child.stdin.take().unwrap(), child.stdout.take().unwrap());
        let (send, messages) = channel();
        std::thread::spawn(move || {
            let mut output = BufReader::new(output);
            while let Some(message) = read(&mut output) {
                if send.send(message).is_err() {
                    break;
                }
            }
        });
        let mut server = Self {
            child,
            input,
            messages,
            requests: 0,
            diagnostics: BTreeMap::new(),
        };
        let can = json!({ "textDocument": {
            "completion": { "completionItem": { "snippetSupport": true } },
            "hover": { "contentFormat": ["markdown"] },
        } });
        server.ask(
            "initialize",
            json!({ "processId": null, "rootUri": null, "capabilities": can }),
        );
        server.tell("initialized", json!({}));
        // Nothing is looked up outside: what the files name themselves is all there is.
        let settings = json!({ "yaml": {
            "validate": true, "hover": true, "completion": true, "schemaStore": { "enable": false, "url": "" },
        } });
        server.tell(
            "workspace/didChangeConfiguration",
            json!({ "settings": settings }),
        );
        Some(server)
    }

    /// Opens a file with a text that need not be what is on disk.
    pub fn open(&mut self, path: &Path, text: &str) {
        let uri = uri(path);
        self.diagnostics.remove(&uri);
        let document = json!({ "uri": uri, "languageId": "yaml", "version": 1, "text": text });
        self.tell("textDocument/didOpen", json!({ "textDocument": document }));
    }

    /// What is underlined in a file that was opened; waits for it.
    pub fn underlined(&mut self, path: &Path) -> Vec<Finding> {
        let uri = uri(path);
        while !self.diagnostics.contains_key(&uri) {
            self.receive();
        }
        let found = self.diagnostics[&uri].as_array().unwrap().iter();
        let mut found: Vec<Finding> = found
            .map(|found| Finding {
                line: found["range"]["start"]["line"].as_u64().unwrap() as usize + 1,
                message: found["message"].as_str().unwrap().to_owned(),
            })
            .collect();
        found.sort();
        found
    }

    /// The labels that are offered at a place; line and column are counted from 1.
    pub fn offered(&mut self, path: &Path, line: usize, column: usize) -> Vec<String> {
        let answer = self.ask("textDocument/completion", place(path, line, column));
        let items = answer
            .get("items")
            .unwrap_or(&answer)
            .as_array()
            .cloned()
            .unwrap_or_default();
        let labels = items
            .iter()
            .map(|item| item["label"].as_str().unwrap().to_owned());
        labels.collect()
    }

    /// What is shown for a place.
    pub fn explained(&mut self, path: &Path, line: usize, column: usize) -> String {
        let answer = self.ask("textDocument/hover", place(path, line, column));
        answer["contents"]["value"]
            .as_str()
            .unwrap_or_default()
            .to_owned()
    }

    fn ask(&mut self, method: &str, parameters: Value) -> Value {
        self.requests += 1;
        let id = self.requests;
        self.write(&json!({ "jsonrpc": "2.0", "id": id, "method": method, "params": parameters }));
        loop {
            let message = self.receive();
            if message["id"] == id && message.get("method").is_none() {
                assert!(message.get("error").is_none(), "{method}: {message}");
                return message["result"].clone();
            }
        }
    }

    fn tell(&mut self, method: &str, parameters: Value) {
        self.write(&json!({ "jsonrpc": "2.0", "method": method, "params": parameters }));
    }

    fn write(&mut self, message: &Value) {
        let text = message.to_string();
        write!(self.input, "Content-Length: {}\r\n\r\n{text}", text.len()).unwrap();
        self.input.flush().unwrap();
    }

    /// The next message; what the server wants to know is answered with nothing, what it finds is kept.
    fn receive(&mut self) -> Value {
        let message = self
            .messages
            .recv_timeout(PATIENCE)
            .expect("the language server says nothing");
        if message["method"] == "textDocument/publishDiagnostics" {
            let uri = message["params"]["uri"].as_str().unwrap().to_owned();
            self.diagnostics
                .insert(uri, message["params"]["diagnostics"].clone());
        } else if let (Some(_), Some(id)) = (message.get("method"), message.get("id")) {
            self.write(&json!({ "jsonrpc": "2.0", "id": id, "result": null }));
        }
        message
    }
}

impl Drop for Server {
    fn drop(&mut self) {
        let _ = self.child.kill();
        let _ = self.child.wait();
    }
}

/// Something that the server found wrong; the line is counted from 1.
#[derive(Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Finding {
    pub line: usize,
    pub message: String,
}

fn uri(path: &Path) -> String {
    format!("file://{}", PathBuf::from(path).display())
}

fn place(path: &Path, line: usize, column: usize) -> Value {
    json!({ "textDocument": { "uri": uri(path) }, "position": { "line": line - 1, "character": column - 1 } })
}

fn read(output: &mut impl BufRead) -> Option<Value> {
    let mut length = 0;
    loop {
        let mut line = String::new();
        if output.read_line(&mut line).ok()? == 0 {
            return None;
        }
        match line.trim().split_once(": ") {
            Some(("Content-Length", number)) => length = number.parse().ok()?,
            Some(_) => {}
            None => break,
        }
    }
    let mut body = vec![0; length];
    output.read_exact(&mut body).ok()?;
    serde_json::from_slice(&body).ok()
}
