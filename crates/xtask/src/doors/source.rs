//! The core's source as a tree of modules, and what a path in one of them leads to.

use std::collections::BTreeMap;
use std::path::Path;

use syn::{Item, UseTree, Visibility};

use crate::expansion::expanded;

/// A module's path below the crate, for example `["meter", "span"]`.
pub type ModulePath = Vec<String>;

/// What a path leads to.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Target {
    Module(ModulePath),
    /// The module that defines it, and its name.
    Item(ModulePath, String),
}

/// One `use`: the path as written, the name it gets here, or none for a glob.
pub struct Import {
    pub public: bool,
    pub path: Vec<String>,
    pub name: Option<String>,
}

/// Every module of the core.
pub struct Source {
    pub modules: BTreeMap<ModulePath, Vec<Item>>,
}

impl Source {
    /// Takes the core as the compiler sees it once every macro has made its functions.
    pub fn read(root: &Path) -> Result<Self, String> {
        let parsed = syn::parse_file(&expanded(root, "reckohm", "reckohm")?)
            .map_err(|error| format!("could not parse the core: {error}"))?;
        let mut source = Source { modules: BTreeMap::new() };
        source.add(Vec::new(), parsed.items);
        Ok(source)
    }

    fn add(&mut self, path: ModulePath, mut items: Vec<Item>) {
        for item in &mut items {
            if let Item::Mod(module) = item
                && let Some((_, inner)) = module.content.take()
            {
                self.add([path.as_slice(), &[module.ident.to_string()]].concat(), inner);
            }
        }
        self.modules.insert(path, items);
    }

    /// Where a path written in `module` leads; none for what lies outside the core (another crate, a primitive).
    pub fn resolve(&self, module: &[String], path: &[String]) -> Option<Target> {
        self.follow(module, path, 0)
    }

    fn follow(&self, module: &[String], path: &[String], depth: usize) -> Option<Target> {
        if depth > 16 {
            return None;
        }
        let (first, rest) = path.split_first()?;
        let start = match first.as_str() {
            "crate" => Target::Module(Vec::new()),
            "self" => Target::Module(module.to_vec()),
            "super" => Target::Module(module.split_last()?.1.to_vec()),
            name => self.named(module, name, depth)?,
        };
        match (start, rest.is_empty()) {
            (target, true) => Some(target),
            (Target::Module(inner), false) => self.follow(&inner, rest, depth + 1),
            (Target::Item(..), false) => None,
        }
    }

    /// What a single name means in a module: defined there, a child, or imported.
    fn named(&self, module: &[String], name: &str, depth: usize) -> Option<Target> {
        let items = self.modules.get(module)?;
        for item in items {
            if let Item::Mod(child) = item
                && child.ident == name
            {
                let mut below = module.to_vec();
                below.push(name.to_owned());
                return Some(Target::Module(below));
            }
            if defined_name(item).is_some_and(|defined| defined == name) {
                return Some(Target::Item(module.to_vec(), name.to_owned()));
            }
        }
        let imports: Vec<Import> = items.iter().flat_map(imports).collect();
        let by_name = imports.iter().filter(|import| import.name.as_deref() == Some(name));
        for import in by_name {
            // `use super::span;` inside a module named `span` must not lead back to itself for ever: depth ends it.
            if let Some(target) = self.follow(module, &import.path, depth + 1) {
                return Some(target);
            }
        }
        for import in imports.iter().filter(|import| import.name.is_none()) {
            if let Some(Target::Module(inner)) = self.follow(module, &import.path, depth + 1)
                && inner != module
                && let Some(target) = self.named(&inner, name, depth + 4)
            {
                return Some(target);
            }
        }
        None
    }
}

/// Whether it is `pub` without restriction.
pub fn is_public(visibility: &Visibility) -> bool {
    matches!(visibility, Visibility::Public(_))
}

/// The name that an item defines, of the kinds that a door can lead to.
pub fn defined_name(item: &Item) -> Option<String> {
    Some(match item {
        Item::Fn(item) => item.sig.ident.to_string(),
        Item::Struct(item) => item.ident.to_string(),
        Item::Enum(item) => item.ident.to_string(),
        Item::Trait(item) => item.ident.to_string(),
        Item::Type(item) => item.ident.to_string(),
        _ => return None,
    })
}

/// The imports of one item, if it is a `use`.
pub fn imports(item: &Item) -> Vec<Import> {
    let mut found = Vec::new();
    if let Item::Use(item) = item {
        flatten(&item.tree, &mut Vec::new(), is_public(&item.vis), &mut found);
    }
    found
}

fn flatten(tree: &UseTree, path: &mut Vec<String>, public: bool, found: &mut Vec<Import>) {
    match tree {
        UseTree::Path(step) => {
            path.push(step.ident.to_string());
            flatten(&step.tree, path, public, found);
            path.pop();
        }
        UseTree::Group(group) => group.items.iter().for_each(|tree| flatten(tree, path, public, found)),
        UseTree::Glob(_) => found.push(Import { public, path: path.clone(), name: None }),
        UseTree::Name(name) if name.ident == "self" => {
            found.push(Import { public, path: path.clone(), name: path.last().cloned() });
        }
        UseTree::Name(name) => {
            let name = name.ident.to_string();
            found.push(Import {
                public,
                path: [path.as_slice(), std::slice::from_ref(&name)].concat(),
                name: Some(name),
            });
        }
        UseTree::Rename(rename) => {
            let path = [path.as_slice(), &[rename.ident.to_string()]].concat();
            found.push(Import { public, path, name: Some(rename.rename.to_string()) });
        }
    }
}
