//! What stands between fences on a page.

/// A fenced block.
pub struct Block<'a> {
    /// The word behind the fence that opens it.
    pub language: &'a str,
    /// Its lines.
    pub text: String,
    /// Where its first line is, counted from nothing; where it has none, its closing fence.
    pub line: usize,
}

/// Every fenced block of a page, in order.
pub fn blocks(page: &str) -> Vec<Block<'_>> {
    let mut blocks = Vec::new();
    let mut open: Option<Block<'_>> = None;
    for (number, line) in page.lines().enumerate() {
        match (&mut open, line.strip_prefix("```")) {
            (None, Some(language)) => {
                open = Some(Block {
                    language,
                    text: String::new(),
                    line: number + 1,
                });
            }
            (Some(_), Some(_)) => blocks.extend(open.take()),
            (Some(block), None) => {
                block.text.push_str(line);
                block.text.push('\n');
            }
            (None, None) => {}
        }
    }
    assert!(open.is_none(), "a block is never closed");
    blocks
}

/// What stands in the blocks of a language.
pub fn texts(page: &str, language: &str) -> Vec<String> {
    let of = |block: &Block<'_>| block.language == language;
    blocks(page)
        .into_iter()
        .filter(of)
        .map(|block| block.text)
        .collect()
}
