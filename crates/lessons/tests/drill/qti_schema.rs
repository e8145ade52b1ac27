//! Packages against the published schemas: every element, in its order and number, with the
//! attributes that it must and may have, each of its type.
//!
//! Sources, of what packages use the whole, in the order of the schemas' sequences:
//! - questions and test: `imsqti_v2p1.xsd`, QTI 2.1, final (IMS Global, 2012): the types
//!   `AssessmentItem`, `AssessmentTest` and those that they lead to;
//! - manifest: `qtiv2p1_imscpv1p2_v1p0.xsd`, the profile of Content Packaging 1.2 for QTI 2.1,
//!   final (IMS Global, 2014).

use crate::qti::files;
use lessons::drill::generate;
use lessons::drill::qti::package;
use lessons::drill::set::PracticeSet;
use roxmltree::{Document, Node};
use std::collections::BTreeSet;

/// What a value may be.
#[derive(Clone, Copy, Debug)]
enum Type {
    /// `xs:normalizedString`, `xs:anyURI`: any text of a line.
    Line,
    /// `String256.Type`.
    Short,
    /// `xs:NCName`, and `xs:ID` as its like: a letter or `_`, then also figures, `-` and `.`.
    Name,
    Boolean,
    Double,
    Int,
    OneOf(&'static [&'static str]),
}

use Type::{Boolean, Double, Int, Line, Name, OneOf, Short};

const ANY: usize = usize::MAX;
const CARDINALITY: Type = OneOf(&["multiple", "ordered", "record", "single"]);
/// Of the eleven base types those that a choice and its score have.
const BASE_TYPE: Type = OneOf(&["boolean", "float", "identifier", "integer", "string", "uri"]);

/// An element: its name; its attributes, whether each is required, and its type; its children in
/// order, the least and the most of each; and the type of its text, where it has text.
type Rule = (
    &'static str,
    &'static [(&'static str, bool, Type)],
    &'static [(&'static str, usize, usize)],
    Option<Type>,
);

const QUESTIONS: &[Rule] = &[
    (
        "assessmentItem",
        &[
            ("identifier", true, Line),
            ("title", true, Line),
            ("label", false, Short),
            ("lang", false, Line),
            ("toolName", false, Short),
            ("toolVersion", false, Short),
            ("adaptive", false, Boolean),
            ("timeDependent", true, Boolean),
        ],
        &[
            ("responseDeclaration", 0, ANY),
            ("outcomeDeclaration", 0, ANY),
            ("templateDeclaration", 0, ANY),
            ("templateProcessing", 0, 1),
            ("stylesheet", 0, ANY),
            ("itemBody", 0, 1),
            ("responseProcessing", 0, 1),
            ("modalFeedback", 0, ANY),
        ],
        None,
    ),
    (
        "responseDeclaration",
        &[
            ("identifier", true, Name),
            ("cardinality", true, CARDINALITY),
            ("baseType", false, BASE_TYPE),
        ],
        &[("defaultValue", 0, 1), ("correctResponse", 0, 1)],
        None,
    ),
    (
        "outcomeDeclaration",
        &[
            ("identifier", true, Name),
            ("cardinality", true, CARDINALITY),
            ("baseType", false, BASE_TYPE),
        ],
        &[("defaultValue", 0, 1)],
        None,
    ),
    (
        "correctResponse",
        &[("interpretation", false, Line)],
        &[("value", 1, ANY)],
        None,
    ),
    (
        "defaultValue",
        &[("interpretation", false, Line)],
        &[("value", 1, ANY)],
        None,
    ),
    ("value", &[], &[], Some(Line)),
    ("itemBody", &[], &[("choiceInteraction", 0, ANY)], None),
    (
        "choiceInteraction",
        &[
            ("responseIdentifier", true, Name),
            ("shuffle", false, Boolean),
            ("maxChoices", false, Int),
            ("minChoices", false, Int),
        ],
        &[("prompt", 0, 1), ("simpleChoice", 1, ANY)],
        None,
    ),
    ("prompt", &[], &[], Some(Line)),
    (
        "simpleChoice",
        &[("identifier", true, Name), ("fixed", false, Boolean)],
        &[],
        Some(Line),
    ),
    (
        "responseProcessing",
        &[("template", false, Line)],
        &[],
        None,
    ),
    (
        "assessmentTest",
        &[
            ("identifier", true, Line),
            ("title", true, Line),
            ("toolName", false, Short),
            ("toolVersion", false, Short),
        ],
        &[
            ("outcomeDeclaration", 0, ANY),
            ("timeLimits", 0, 1),
            ("stylesheet", 0, ANY),
            ("testPart", 1, ANY),
            ("outcomeProcessing", 0, 1),
            ("testFeedback", 0, ANY),
        ],
        None,
    ),
    (
        "timeLimits",
        &[("minTime", false, Double), ("maxTime", false, Double)],
        &[],
        None,
    ),
    (
        "testPart",
        &[
            ("identifier", true, Name),
            ("navigationMode", true, OneOf(&["linear", "nonlinear"])),
            (
                "submissionMode",
                true,
                OneOf(&["individual", "simultaneous"]),
            ),
        ],
        &[("timeLimits", 0, 1), ("assessmentSection", 1, ANY)],
        None,
    ),
    (
        "assessmentSection",
        &[
            ("identifier", true, Name),
            ("required", false, Boolean),
            ("fixed", false, Boolean),
            ("title", true, Line),
            ("visible", true, Boolean),
            ("keepTogether", false, Boolean),
        ],
        &[("timeLimits", 0, 1), ("assessmentItemRef", 0, ANY)],
        None,
    ),
    (
        "assessmentItemRef",
        &[
            ("identifier", true, Name),
            ("required", false, Boolean),
            ("fixed", false, Boolean),
            ("href", true, Line),
        ],
        &[("timeLimits", 0, 1)],
        None,
    ),
];

const MANIFEST: &[Rule] = &[
    (
        "manifest",
        &[("identifier", true, Name)],
        &[
            ("metadata", 1, 1),
            ("organizations", 1, 1),
            ("resources", 1, 1),
        ],
        None,
    ),
    (
        "metadata",
        &[],
        &[("schema", 1, 1), ("schemaversion", 1, 1)],
        None,
    ),
    (
        "schema",
        &[],
        &[],
        Some(OneOf(&["QTIv2.1 Package", "QTIv2.1 Item Bank Package"])),
    ),
    ("schemaversion", &[], &[], Some(OneOf(&["1.0.0"]))),
    ("organizations", &[], &[], None),
    ("resources", &[], &[("resource", 0, ANY)], None),
    (
        "resource",
        &[
            ("identifier", true, Name),
            (
                "type",
                true,
                OneOf(&[
                    "imsqti_test_xmlv2p1",
                    "imsqti_section_xmlv2p1",
                    "imsqti_item_xmlv2p1",
                    "imsqti_resprocessing_xmlv2p1",
                    "webcontent",
                ]),
            ),
            ("href", false, Line),
        ],
        &[("metadata", 0, 1), ("file", 0, ANY), ("dependency", 0, ANY)],
        None,
    ),
    ("file", &[("href", true, Line)], &[], None),
    ("dependency", &[("identifierref", true, Name)], &[], None),
];

fn is_of(value: &str, kind: Type) -> bool {
    let begins = |it: char| it.is_ascii_alphabetic() || it == '_';
    match kind {
        Line => !value.chars().any(char::is_control),
        Short => value.chars().count() <= 256,
        Name => {
            value.starts_with(begins)
                && value
                    .chars()
                    .all(|it| begins(it) || it.is_ascii_digit() || "-.".contains(it))
        }
        Boolean => ["true", "false", "0", "1"].contains(&value),
        Double => value.parse::<f64>().is_ok(),
        Int => value.parse::<i32>().is_ok(),
        OneOf(values) => values.contains(&value),
    }
}

/// What is wrong with an element and all within it.
fn wrong(node: Node, rules: &[Rule]) -> Vec<String> {
    let name = node.tag_name().name();
    let Some((_, attributes, children, text)) = rules.iter().find(|it| it.0 == name) else {
        return vec![format!("{name} is no element")];
    };
    let mut found = Vec::new();
    let root = node.document().root_element().tag_name().namespace();
    if node.tag_name().namespace() != root {
        found.push(format!("{name} is of another namespace"));
    }
    for attribute in node.attributes() {
        // Where the schema lies may stand in any element (XML Schema 1.0, 2.6).
        if attribute.name() == "schemaLocation" {
            continue;
        }
        let rule = attributes.iter().find(|it| it.0 == attribute.name());
        if !rule.is_some_and(|(_, _, kind)| is_of(attribute.value(), *kind)) {
            found.push(format!(
                "{name}: {}={:?}",
                attribute.name(),
                attribute.value()
            ));
        }
    }
    for (required, _, _) in attributes.iter().filter(|it| it.1) {
        if !node.has_attribute(*required) {
            found.push(format!("{name} without {required}"));
        }
    }
    let said = node.text().unwrap_or_default();
    let allowed = text.map_or(said.trim().is_empty(), |kind| is_of(said, kind));
    if !allowed {
        found.push(format!("{name} says {said:?}"));
    }
    let within: Vec<Node> = node.children().filter(Node::is_element).collect();
    let mut rest = within.as_slice();
    for (child, least, most) in *children {
        let count = rest
            .iter()
            .take_while(|it| it.tag_name().name() == *child)
            .count();
        if count < *least || count > *most {
            found.push(format!("{name} has {count} of {child}"));
        }
        rest = &rest[count..];
    }
    if let Some(left) = rest.first() {
        found.push(format!("{name}: {} out of place", left.tag_name().name()));
    }
    found.extend(within.into_iter().flat_map(|it| wrong(it, rules)));
    found
}

const SET: &str = r#"{"version": 1, "title": "Été & <Übung>", "seed": 11, "time_limit_s": 61.5,
    "parts": [{"kind": "predict", "count": 4, "level": 1}, {"kind": "predict", "count": 4, "level": 3},
              {"kind": "read", "count": 3, "level": 2}, {"kind": "name-the-cause", "count": 4, "level": 1},
              {"kind": "corrections", "count": 12, "level": 3}]}"#;

fn made() -> Vec<(String, String)> {
    let set = PracticeSet::from_json(SET).unwrap();
    let tasks: Vec<_> = (set.tasks(0).iter().map(|it| generate(it).unwrap())).collect();
    files(&package(&set, &tasks).unwrap())
}

#[test]
fn every_file_of_a_package_is_valid() {
    let files = made();
    assert_eq!(files.len(), 2 + 27);
    for (name, xml) in files {
        let document = Document::parse(&xml).unwrap();
        let manifest = name == "imsmanifest.xml";
        let rules = if manifest { MANIFEST } else { QUESTIONS };
        let found = wrong(document.root_element(), rules);
        assert!(found.is_empty(), "{name}: {found:?}");
        // `xs:ID` and `xs:IDREF`: each once, and there.
        let all = || document.descendants().filter(Node::is_element);
        let ids: Vec<&str> = all().filter_map(|it| it.attribute("identifier")).collect();
        let each: BTreeSet<&str> = ids.iter().copied().collect();
        assert_eq!(each.len(), ids.len(), "{name}");
        for needed in all().filter_map(|it| it.attribute("identifierref")) {
            assert!(each.contains(needed), "{name}: {needed}");
        }
    }
}

#[test]
fn what_is_not_valid_is_found() {
    let files = made();
    let [test, item] = ["test.xml", "task-001.xml"].map(|wanted| {
        let found = files.iter().find(|(name, _)| name == wanted);
        &found.unwrap().1
    });
    let found = |xml: &str, from: &str, to: &str| {
        assert!(xml.contains(from), "{from}");
        let changed = xml.replacen(from, to, 1);
        wrong(Document::parse(&changed).unwrap().root_element(), QUESTIONS)
    };
    for (xml, from, to, says) in [
        (
            test,
            "maxTime=\"61.5\"",
            "maxTime=\"1 min\"",
            "timeLimits: maxTime=\"1 min\"",
        ),
        (
            test,
            " visible=\"true\"",
            "",
            "assessmentSection without visible",
        ),
        (
            test,
            "\"linear\"",
            "\"straight\"",
            "testPart: navigationMode=\"straight\"",
        ),
        (
            item,
            "\"RESPONSE\"",
            "\"1\"",
            "responseDeclaration: identifier=\"1\"",
        ),
        (
            item,
            "<prompt>",
            "<prompt/><prompt>",
            "choiceInteraction has 2 of prompt",
        ),
        (
            item,
            "<itemBody>",
            "<itemBody/><itemBody>",
            "assessmentItem has 2 of itemBody",
        ),
        (item, "<itemBody>", "<itemBody>x", "itemBody says"),
        (
            item,
            "<simpleChoice ",
            "<simpleChoice score=\"1\" ",
            "simpleChoice: score=\"1\"",
        ),
    ] {
        let found = found(xml, from, to);
        assert!(
            found.iter().any(|it| it.starts_with(says)),
            "{says}: {found:?}"
        );
    }
}
