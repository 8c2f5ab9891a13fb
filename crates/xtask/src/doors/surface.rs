//! The public functions of the core, found by reading its source: what a caller can name, by the path the caller writes.

use std::collections::{BTreeMap, BTreeSet};

use syn::{Attribute, FnArg, Item, ItemImpl, ReturnType, Signature, Type};

use super::source::{Source, Target, defined_name, imports, is_public};

/// One public function or method.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Function {
    /// As a caller writes it, without the crate: `meter::Span::read`.
    pub path: String,
    /// Its own documentation holds an example that the documentation tests run.
    pub example: bool,
    /// It returns a `Result`.
    pub fallible: bool,
    /// It takes only `self` and cannot fail: it shows what a value holds.
    pub getter: bool,
}

/// Every public function, sorted by path.
pub fn functions(source: &Source) -> Result<Vec<Function>, String> {
    let mut surface = Surface { source, names: BTreeMap::new(), seen: BTreeSet::new() };
    surface.visit(&[], &[]);
    let mut found = Vec::new();
    for (target, names) in &surface.names {
        let Target::Item(module, name) = target else { continue };
        let public = shortest(names);
        for item in source.modules.get(module).into_iter().flatten() {
            match item {
                Item::Fn(item) if item.sig.ident == name => found.push(function(&public, &item.sig, &item.attrs)),
                Item::Trait(item) if item.ident == name => {
                    found.extend(item.items.iter().filter_map(|part| match part {
                        syn::TraitItem::Fn(method) => {
                            Some(function(&format!("{public}::{}", method.sig.ident), &method.sig, &method.attrs))
                        }
                        _ => None,
                    }))
                }
                _ => {}
            }
        }
    }
    surface.methods(&mut found);
    found.sort_by(|a, b| a.path.cmp(&b.path));
    // `impl X<f32>` and `impl X<f64>` give one name.
    found.dedup_by(|later, earlier| {
        earlier.example |= later.path == earlier.path && later.example;
        later.path == earlier.path
    });
    if found.is_empty() { Err("found no public function in the core".to_owned()) } else { Ok(found) }
}

struct Surface<'a> {
    source: &'a Source,
    /// Every public name of each item.
    names: BTreeMap<Target, Vec<Vec<String>>>,
    seen: BTreeSet<(Vec<String>, Vec<String>)>,
}

impl Surface<'_> {
    /// Notes what a module shows under a public name.
    fn visit(&mut self, module: &[String], public: &[String]) {
        if !self.seen.insert((module.to_vec(), public.to_vec())) {
            return;
        }
        let source = self.source;
        for item in source.modules.get(module).into_iter().flatten() {
            if let Item::Mod(child) = item
                && is_public(&child.vis)
            {
                let name = child.ident.to_string();
                self.visit(&[module, std::slice::from_ref(&name)].concat(), &[public, &[name]].concat());
            }
            if let Some(name) = defined_name(item)
                && visible(item)
            {
                self.note(Target::Item(module.to_vec(), name.clone()), [public, &[name]].concat());
            }
            for import in imports(item).into_iter().filter(|import| import.public) {
                match (source.resolve(module, &import.path), import.name) {
                    (Some(Target::Module(inner)), Some(name)) => self.visit(&inner, &[public, &[name]].concat()),
                    (Some(Target::Module(inner)), None) => self.visit(&inner, public),
                    (Some(target), Some(name)) => self.note(target, [public, &[name]].concat()),
                    (Some(Target::Item(..)), None) | (None, _) => {}
                }
            }
        }
    }

    fn note(&mut self, target: Target, name: Vec<String>) {
        self.names.entry(target).or_default().push(name);
    }

    /// The methods of public types, wherever in the core their `impl` stands.
    fn methods(&self, found: &mut Vec<Function>) {
        for (module, items) in &self.source.modules {
            for item in items {
                match item {
                    Item::Impl(block) if block.trait_.is_none() => {
                        let Some(target) = self.self_type(module, block) else { continue };
                        let Some(names) = self.names.get(&target) else { continue };
                        let public = shortest(names);
                        found.extend(block.items.iter().filter_map(|part| match part {
                            syn::ImplItem::Fn(method) if is_public(&method.vis) => {
                                Some(function(&format!("{public}::{}", method.sig.ident), &method.sig, &method.attrs))
                            }
                            _ => None,
                        }));
                    }
                    _ => {}
                }
            }
        }
    }

    fn self_type(&self, module: &[String], block: &ItemImpl) -> Option<Target> {
        let Type::Path(path) = block.self_ty.as_ref() else { return None };
        let path: Vec<String> = path.path.segments.iter().map(|step| step.ident.to_string()).collect();
        self.source.resolve(module, &path)
    }
}

/// The name a caller would use: not by way of `number`, then with the fewest steps.
fn shortest(names: &[Vec<String>]) -> String {
    let by = |name: &&Vec<String>| (name.first().is_some_and(|first| first == "number"), name.len(), (*name).clone());
    names.iter().min_by_key(by).map(|name| name.join("::")).unwrap_or_default()
}

fn visible(item: &Item) -> bool {
    match item {
        Item::Fn(item) => is_public(&item.vis),
        Item::Struct(item) => is_public(&item.vis),
        Item::Enum(item) => is_public(&item.vis),
        Item::Trait(item) => is_public(&item.vis),
        Item::Type(item) => is_public(&item.vis),
        _ => false,
    }
}

fn function(path: &str, signature: &Signature, attributes: &[Attribute]) -> Function {
    let fallible = match &signature.output {
        ReturnType::Type(_, result) => match result.as_ref() {
            Type::Path(path) => path.path.segments.last().is_some_and(|last| last.ident == "Result"),
            _ => false,
        },
        ReturnType::Default => false,
    };
    let only_self = signature.inputs.len() == 1 && matches!(signature.inputs.first(), Some(FnArg::Receiver(_)));
    Function { path: path.to_owned(), example: has_example(attributes), fallible, getter: only_self && !fallible }
}

/// Whether the documentation has a block that is compiled and run.
fn has_example(attributes: &[Attribute]) -> bool {
    let (mut inside, mut runs, mut found) = (false, false, false);
    for line in attributes.iter().filter_map(documentation).flat_map(|text| lines(&text)) {
        let Some(kind) = line.trim_start().strip_prefix("```") else { continue };
        if inside {
            found |= runs;
        } else {
            let words = ["text", "ignore", "no_run", "compile_fail", "c", "python", "csv", "toml", "sh"];
            runs = !kind.split(',').any(|word| words.contains(&word.trim()));
        }
        inside = !inside;
    }
    found
}

fn lines(text: &str) -> Vec<String> {
    text.lines().map(str::to_owned).collect()
}

fn documentation(attribute: &Attribute) -> Option<String> {
    if !attribute.path().is_ident("doc") {
        return None;
    }
    let syn::Meta::NameValue(pair) = &attribute.meta else { return None };
    let syn::Expr::Lit(literal) = &pair.value else { return None };
    let syn::Lit::Str(text) = &literal.lit else { return None };
    Some(text.value())
}

#[cfg(test)]
mod tests {
    use super::*;

    fn of(modules: &[(&[&str], &str)]) -> Vec<Function> {
        let modules = modules
            .iter()
            .map(|(path, text)| {
                let path = path.iter().map(|step| (*step).to_owned()).collect();
                (path, syn::parse_file(text).unwrap().items)
            })
            .collect();
        functions(&Source { modules }).unwrap()
    }

    fn paths(found: &[Function]) -> Vec<&str> {
        found.iter().map(|function| function.path.as_str()).collect()
    }

    #[test]
    fn follows_public_uses_into_private_modules() {
        let found = of(&[
            (&[], "pub mod verdict; mod part; pub mod shapes { }"),
            (&["part"], "mod limits; pub use limits::Limits; pub fn hidden() {}"),
            (
                &["part", "limits"],
                "pub struct Limits; impl Limits { pub fn lower(&self) -> f64 { 0.0 } fn own(&self) {} }",
            ),
            (
                &["verdict"],
                "pub use crate::part::Limits; pub fn judge() -> Result<(), Error> { Ok(()) } pub(crate) fn inner() {}",
            ),
        ]);
        assert_eq!(paths(&found), ["verdict::Limits::lower", "verdict::judge"]);
        assert!(found[0].getter && !found[0].fallible);
        assert!(found[1].fallible && !found[1].getter);
    }

    #[test]
    fn follows_globs_and_impls_in_other_files() {
        let found = of(&[
            (&[], "pub mod meter; mod other;"),
            (&["meter"], "mod span; pub use self::span::*;"),
            (&["meter", "span"], "pub struct Span; pub enum Kind { A }"),
            (
                &["other"],
                "use crate::meter::Span as S; impl S { pub fn read(&self, text: &[u8]) -> Result<f64, E> { } }",
            ),
        ]);
        assert_eq!(paths(&found), ["meter::Span::read"]);
    }

    #[test]
    fn an_example_counts_only_if_it_runs() {
        let with = |fence: &str| {
            let text = format!("/// Words.\n/// {fence}\n/// let x = 1;\n/// ```\npub fn f() {{}}");
            of(&[(&[], text.as_str())])[0].example
        };
        assert!(with("```"));
        assert!(with("```rust"));
        assert!(!with("```text"));
        assert!(!with("```ignore"));
        assert!(!with("no fence, then the end of one ```"));
    }
}
