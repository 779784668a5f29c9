//! A file system in memory that fails when it is told to, and whose power can go.
//!
//! It is as hard on its users as a real one may be: a failed write leaves half of its bytes; what was not flushed
//! may be gone after the power was; names are as they were last flushed, or as they are, and both are to be tried;
//! a rename between two names of one file does nothing.

use std::cell::RefCell;
use std::collections::{BTreeMap, BTreeSet};
use std::io::{self, ErrorKind};
use std::path::{Path, PathBuf};
use std::rc::Rc;

use safekeeping::{Files, Handle, Kind};

/// Which operations fail, counted from 0.
#[derive(Clone, Copy, Debug, Default)]
pub(crate) enum Fail {
    /// None.
    #[default]
    Never,
    /// That one.
    At(usize),
    /// That one and all after it, as for a process that is killed.
    From(usize),
}

#[derive(Clone, Debug, Default)]
struct Node {
    bytes: Vec<u8>,
    /// What is on the disk.
    flushed: Vec<u8>,
    locked_by: Option<usize>,
    protected: bool,
}

#[derive(Clone, Debug, Default)]
struct State {
    nodes: Vec<Node>,
    names: BTreeMap<PathBuf, usize>,
    /// Names that are on the disk.
    flushed: BTreeMap<PathBuf, usize>,
    folders: BTreeSet<PathBuf>,
    no_links: bool,
    fail: Fail,
    kind: Option<ErrorKind>,
    done: usize,
    handles: usize,
    fresh: usize,
}

/// The file system.
#[derive(Clone, Debug, Default)]
pub(crate) struct Memory(Rc<RefCell<State>>);

/// An open file in it.
#[derive(Debug)]
pub(crate) struct Open {
    memory: Memory,
    node: usize,
    number: usize,
}

impl Memory {
    /// Empty, but for folders.
    pub(crate) fn with_folders(folders: &[&str]) -> Self {
        let memory = Self::default();
        memory.0.borrow_mut().folders = folders.iter().map(PathBuf::from).collect();
        memory
    }

    /// Without links, as some disks are.
    pub(crate) fn without_links(self) -> Self {
        self.0.borrow_mut().no_links = true;
        self
    }

    /// Puts a file there, on the disk.
    pub(crate) fn put(&self, path: &str, bytes: &[u8]) {
        let mut state = self.0.borrow_mut();
        let node = state.nodes.len();
        state.nodes.push(Node { bytes: bytes.to_vec(), flushed: bytes.to_vec(), ..Node::default() });
        state.names.insert(path.into(), node);
        state.flushed.insert(path.into(), node);
    }

    /// Write-protects a file.
    pub(crate) fn protect(&self, path: &str) {
        let mut state = self.0.borrow_mut();
        let node = state.names[Path::new(path)];
        state.nodes[node].protected = true;
    }

    /// What is in a file.
    pub(crate) fn bytes(&self, path: impl AsRef<Path>) -> Option<Vec<u8>> {
        let state = self.0.borrow();
        state.names.get(path.as_ref()).map(|&node| state.nodes[node].bytes.clone())
    }

    /// Every name.
    pub(crate) fn names(&self) -> Vec<String> {
        self.0.borrow().names.keys().map(|path| path.display().to_string()).collect()
    }

    /// Has operations fail from now on, and counts from 0.
    pub(crate) fn fail(&self, fail: Fail, kind: ErrorKind) {
        let mut state = self.0.borrow_mut();
        (state.fail, state.kind, state.done) = (fail, Some(kind), 0);
    }

    /// Operations since then.
    pub(crate) fn done(&self) -> usize {
        self.0.borrow().done
    }

    /// The same after every process was killed: nothing is locked, all that the system was given is there.
    pub(crate) fn after_kill(&self) -> Self {
        let mut state = self.0.borrow().clone();
        state.fail = Fail::Never;
        state.nodes.iter_mut().for_each(|node| node.locked_by = None);
        Self(Rc::new(RefCell::new(state)))
    }

    /// The same after the power went: of what was not flushed only so many bytes of each file are there, and the
    /// names are the flushed ones or the last.
    pub(crate) fn after_power_loss(&self, spared: usize, last_names: bool) -> Self {
        let after = self.after_kill();
        let mut state = after.0.borrow_mut();
        if !last_names {
            state.names = state.flushed.clone();
        }
        for node in &mut state.nodes {
            let end = (node.flushed.len() + spared).min(node.bytes.len());
            node.bytes.truncate(end);
            node.flushed = node.bytes.clone();
        }
        state.flushed = state.names.clone();
        drop(state);
        after
    }

    /// Counts an operation; `Err` is its failure.
    fn operate(&self) -> io::Result<()> {
        let mut state = self.0.borrow_mut();
        let number = state.done;
        state.done += 1;
        match state.fail {
            Fail::At(at) if number == at => Err(state.kind.unwrap().into()),
            Fail::From(from) if number >= from => Err(state.kind.unwrap().into()),
            _ => Ok(()),
        }
    }

    fn new_node(&self, path: &Path) -> io::Result<usize> {
        let mut state = self.0.borrow_mut();
        if state.names.contains_key(path) {
            return Err(ErrorKind::AlreadyExists.into());
        }
        if !state.folders.contains(path.parent().unwrap()) {
            return Err(ErrorKind::NotFound.into());
        }
        let node = state.nodes.len();
        state.nodes.push(Node::default());
        state.names.insert(path.to_path_buf(), node);
        Ok(node)
    }

    fn handle(&self, node: usize) -> Open {
        let mut state = self.0.borrow_mut();
        state.handles += 1;
        Open { memory: self.clone(), node, number: state.handles }
    }
}

impl Files for Memory {
    type Handle = Open;

    fn absolute(&self, path: &Path) -> io::Result<PathBuf> {
        self.operate().map(|()| path.to_path_buf())
    }

    fn resolve(&self, path: &Path) -> io::Result<PathBuf> {
        self.operate().map(|()| path.to_path_buf())
    }

    fn kind(&self, path: &Path) -> io::Result<Kind> {
        self.operate()?;
        let state = self.0.borrow();
        Ok(match state.names.get(path) {
            Some(&node) if state.nodes[node].protected => Kind::Protected,
            Some(_) => Kind::File,
            None if state.folders.contains(path) => Kind::Folder,
            None => Kind::Nothing,
        })
    }

    fn fresh(&self) -> String {
        let mut state = self.0.borrow_mut();
        state.fresh += 1;
        state.fresh.to_string()
    }

    fn write_new(&self, path: &Path, bytes: &[u8], _like: &Path) -> io::Result<()> {
        let failure = self.operate();
        let node = self.new_node(path)?;
        let mut state = self.0.borrow_mut();
        let written = if failure.is_ok() { bytes } else { &bytes[..bytes.len() / 2] };
        state.nodes[node].bytes = written.to_vec();
        failure?;
        state.nodes[node].flushed = bytes.to_vec();
        Ok(())
    }

    fn copy_new(&self, from: &Path, to: &Path) -> io::Result<()> {
        let Some(bytes) = self.bytes(from) else {
            return Err(ErrorKind::NotFound.into());
        };
        if self.0.borrow().no_links {
            return self.write_new(to, &bytes, from);
        }
        self.operate()?;
        let mut state = self.0.borrow_mut();
        if state.names.contains_key(to) {
            return Err(ErrorKind::AlreadyExists.into());
        }
        let node = state.names[from];
        state.names.insert(to.to_path_buf(), node);
        Ok(())
    }

    fn rename(&self, from: &Path, to: &Path) -> io::Result<()> {
        self.operate()?;
        let mut state = self.0.borrow_mut();
        let node = *state.names.get(from).ok_or(ErrorKind::NotFound)?;
        if state.folders.contains(to) {
            return Err(ErrorKind::IsADirectory.into());
        }
        if state.names.get(to) != Some(&node) {
            state.names.remove(from);
            state.names.insert(to.to_path_buf(), node);
        }
        Ok(())
    }

    fn remove(&self, path: &Path) -> io::Result<()> {
        self.operate()?;
        self.0.borrow_mut().names.remove(path).map(drop).ok_or_else(|| ErrorKind::NotFound.into())
    }

    fn list(&self, folder: &Path) -> io::Result<Vec<PathBuf>> {
        self.operate()?;
        let state = self.0.borrow();
        if !state.folders.contains(folder) {
            return Err(ErrorKind::NotFound.into());
        }
        Ok(state.names.keys().filter(|path| path.parent() == Some(folder)).cloned().collect())
    }

    fn create_folder(&self, folder: &Path) -> io::Result<()> {
        self.operate()?;
        self.0.borrow_mut().folders.insert(folder.to_path_buf());
        Ok(())
    }

    fn sync_folder(&self, folder: &Path) -> io::Result<()> {
        self.operate()?;
        let mut state = self.0.borrow_mut();
        state.flushed.retain(|path, _| path.parent() != Some(folder));
        let here: Vec<_> = state.names.iter().filter(|(path, _)| path.parent() == Some(folder)).collect();
        let here: Vec<_> = here.into_iter().map(|(path, &node)| (path.clone(), node)).collect();
        state.flushed.extend(here);
        Ok(())
    }

    fn create(&self, path: &Path) -> io::Result<Open> {
        self.operate()?;
        Ok(self.handle(self.new_node(path)?))
    }

    fn open(&self, path: &Path) -> io::Result<Open> {
        self.operate()?;
        let node = *self.0.borrow().names.get(path).ok_or(ErrorKind::NotFound)?;
        Ok(self.handle(node))
    }
}

impl Handle for Open {
    fn try_lock(&self) -> io::Result<bool> {
        self.memory.operate()?;
        let node = &mut self.memory.0.borrow_mut().nodes[self.node];
        Ok(*node.locked_by.get_or_insert(self.number) == self.number)
    }

    fn read(&mut self) -> io::Result<Vec<u8>> {
        self.memory.operate()?;
        Ok(self.memory.0.borrow().nodes[self.node].bytes.clone())
    }

    fn append(&mut self, bytes: &[u8]) -> io::Result<()> {
        let failure = self.memory.operate();
        let written = if failure.is_ok() { bytes } else { &bytes[..bytes.len() / 2] };
        self.memory.0.borrow_mut().nodes[self.node].bytes.extend_from_slice(written);
        failure
    }

    fn flush(&mut self) -> io::Result<()> {
        self.memory.operate()?;
        let node = &mut self.memory.0.borrow_mut().nodes[self.node];
        node.flushed = node.bytes.clone();
        Ok(())
    }
}

impl Drop for Open {
    fn drop(&mut self) {
        let node = &mut self.memory.0.borrow_mut().nodes[self.node];
        if node.locked_by == Some(self.number) {
            node.locked_by = None;
        }
    }
}
