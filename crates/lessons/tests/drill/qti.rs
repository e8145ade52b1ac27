//! Tasks as a QTI package: a ZIP file read byte by byte, and XML against what the schema asks for.

use crate::{right, tasks};
use crc::{CRC_32_ISO_HDLC, Crc};
use lessons::drill::qti::{in_words, package};
use lessons::drill::set::PracticeSet;
use lessons::drill::{Kind, Task, generate};
use roxmltree::{Document, Node};

const QTI: &str = "http://www.imsglobal.org/xsd/imsqti_v2p1";
const PACKAGE: &str = "http://www.imsglobal.org/xsd/imscp_v1p1";

const SET: &str = r#"{"version": 1, "title": "Lag & <lead>", "seed": 3, "time_limit_s": 900,
    "parts": [{"kind": "predict", "count": 3, "level": 1}, {"kind": "read", "count": 2},
              {"kind": "roll-out", "count": 1}, {"kind": "name-the-cause", "count": 2, "level": 1},
              {"kind": "name-the-cause", "count": 1, "level": 3},
              {"kind": "corrections", "count": 2}]}"#;

fn set() -> (PracticeSet, Vec<Task>) {
    let set = PracticeSet::from_json(SET).unwrap();
    let tasks = set
        .tasks(0)
        .iter()
        .map(|it| generate(it).unwrap())
        .collect();
    (set, tasks)
}

/// The files of a package, by the local headers alone, as one reads who gets a stream.
///
/// Source: APPNOTE.TXT 6.3.10 (PKWARE), 4.3.7; offsets within the header from there.
pub(crate) fn files(zip: &[u8]) -> Vec<(String, String)> {
    let two = |at: usize| usize::from(u16::from_le_bytes([zip[at], zip[at + 1]]));
    let four = |at: usize| u32::from_le_bytes(zip[at..at + 4].try_into().unwrap());
    let mut files = Vec::new();
    let mut at = 0;
    while four(at) == 0x0403_4b50 {
        // Bit 3 would put the sizes behind the contents (4.4.4), method 0 is stored (4.4.5).
        assert_eq!(two(at + 6) & 8, 0);
        assert_eq!(two(at + 8), 0);
        let size = four(at + 22) as usize;
        let name = at + 30;
        let contents = name + two(at + 26) + two(at + 28);
        let bytes = &zip[contents..contents + size];
        let crc = Crc::<u32>::new(&CRC_32_ISO_HDLC).checksum(bytes);
        assert_eq!(crc, four(at + 14), "4.4.7");
        files.push((
            String::from_utf8(zip[name..name + two(at + 26)].to_vec()).unwrap(),
            String::from_utf8(bytes.to_vec()).unwrap(),
        ));
        at = contents + size;
    }
    assert_eq!(four(at), 0x0201_4b50, "then the directory (4.3.12)");
    files
}

fn only<'a>(node: Node<'a, 'a>, name: &str) -> Node<'a, 'a> {
    let found: Vec<Node> = elements(node).filter(|it| it.has_tag_name(name)).collect();
    assert_eq!(found.len(), 1, "{name}");
    found[0]
}

fn elements<'a>(node: Node<'a, 'a>) -> impl Iterator<Item = Node<'a, 'a>> {
    node.children().filter(Node::is_element)
}

fn names<'a>(node: Node<'a, 'a>) -> Vec<&'a str> {
    elements(node).map(|it| it.tag_name().name()).collect()
}

#[test]
fn the_manifest_names_every_file_once_and_all_that_it_names_is_there() {
    let (set, tasks) = set();
    let files = files(&package(&set, &tasks).unwrap());
    let (name, manifest) = &files[0];
    // Content Packaging 1.2, 3.2: the manifest stands at the root, under this name.
    assert_eq!(name, "imsmanifest.xml");
    let document = Document::parse(manifest).unwrap();
    let root = document.root_element();
    assert_eq!(root.tag_name().namespace(), Some(PACKAGE));
    assert!(root.has_attribute("identifier"));
    // 4.1: in this order.
    assert_eq!(names(root), ["metadata", "organizations", "resources"]);
    let metadata = only(root, "metadata");
    assert_eq!(only(metadata, "schema").text(), Some("QTIv2.1 Package"));
    assert_eq!(only(metadata, "schemaversion").text(), Some("1.0.0"));
    let resources: Vec<Node> = elements(only(root, "resources")).collect();
    let mut named: Vec<&str> = Vec::new();
    for it in &resources {
        let href = it.attribute("href").unwrap();
        assert_eq!(only(*it, "file").attribute("href"), Some(href));
        let kind = if href == "test.xml" { "test" } else { "item" };
        let kind = format!("imsqti_{kind}_xmlv2p1");
        assert_eq!(it.attribute("type"), Some(kind.as_str()));
        named.push(href);
    }
    let there: Vec<&str> = files[1..].iter().map(|(name, _)| name.as_str()).collect();
    assert_eq!(named, there);
    let of = |node: &Node, name: &str| node.attribute(name).unwrap().to_owned();
    let needs: Vec<String> = elements(resources[0])
        .filter(|it| it.has_tag_name("dependency"))
        .map(|it| of(&it, "identifierref"))
        .collect();
    let items: Vec<String> = resources[1..]
        .iter()
        .map(|it| of(it, "identifier"))
        .collect();
    assert_eq!(needs, items);
}

#[test]
fn the_test_has_the_tasks_in_their_order_and_the_time_limit() {
    let (set, tasks) = set();
    let files = files(&package(&set, &tasks).unwrap());
    let document = Document::parse(&files[1].1).unwrap();
    let test = document.root_element();
    assert_eq!(test.tag_name().namespace(), Some(QTI));
    assert_eq!(test.attribute("title"), Some("Lag & <lead>"));
    // The schema's sequence of an assessmentTest: limits before parts.
    assert_eq!(names(test), ["timeLimits", "testPart"]);
    assert_eq!(only(test, "timeLimits").attribute("maxTime"), Some("900"));
    let part = only(test, "testPart");
    assert_eq!(part.attribute("navigationMode"), Some("linear"));
    assert_eq!(part.attribute("submissionMode"), Some("individual"));
    let section = only(part, "assessmentSection");
    assert_eq!(section.attribute("visible"), Some("true"));
    assert!(section.has_attribute("title") && section.has_attribute("identifier"));
    let items: Vec<&str> = elements(section)
        .map(|it| it.attribute("href").unwrap())
        .collect();
    let there: Vec<&str> = files[2..].iter().map(|(name, _)| name.as_str()).collect();
    assert_eq!(items, there);
    // Flown tasks and mixed errors are left out: 3 + 2 + 2 + 2.
    assert_eq!(items.len(), 9);
}

#[test]
fn every_item_asks_its_task_and_is_marked_by_the_standard_s_template() {
    let (set, tasks) = set();
    let files = files(&package(&set, &tasks).unwrap());
    let asked = tasks.iter().filter(|it| in_words(it.id.kind, it.id.level));
    let mut had = std::collections::BTreeSet::new();
    for ((name, xml), task) in files[2..].iter().zip(asked) {
        let document = Document::parse(xml).unwrap();
        let item = document.root_element();
        assert_eq!(item.tag_name().namespace(), Some(QTI));
        // A name of its own, that begins with a letter (the schema's identifier.Type).
        let own = item.attribute("identifier").unwrap();
        assert!(
            own.starts_with("item-") && had.insert(own.to_owned()),
            "{name}"
        );
        // What the schema requires of an assessmentItem.
        assert_eq!(item.attribute("adaptive"), Some("false"));
        assert_eq!(item.attribute("timeDependent"), Some("false"));
        assert!(item.has_attribute("title"));
        let order = [
            "responseDeclaration",
            "outcomeDeclaration",
            "itemBody",
            "responseProcessing",
        ];
        assert_eq!(names(item), order);
        let response = only(item, "responseDeclaration");
        assert_eq!(response.attribute("cardinality"), Some("single"));
        assert_eq!(response.attribute("baseType"), Some("identifier"));
        let value = only(only(response, "correctResponse"), "value").text();
        let score = only(item, "outcomeDeclaration");
        assert_eq!(score.attribute("identifier"), Some("SCORE"));
        assert_eq!(score.attribute("baseType"), Some("float"));
        let interaction = only(only(item, "itemBody"), "choiceInteraction");
        assert_eq!(
            interaction.attribute("responseIdentifier"),
            response.attribute("identifier")
        );
        assert_eq!(interaction.attribute("maxChoices"), Some("1"));
        let mut parts = elements(interaction);
        assert_eq!(parts.next().unwrap().text(), Some(task.question.as_str()));
        let choices: Vec<Node> = parts.collect();
        assert_eq!(choices.len(), task.choices.len());
        for (choice, is) in choices.iter().zip(&task.choices) {
            assert_eq!(choice.text(), Some(is.text.as_str()));
            assert_eq!(choice.attribute("identifier") == value, is.right);
        }
        // Response processing templates, 1: its name must be this one to the letter.
        assert_eq!(
            only(item, "responseProcessing").attribute("template"),
            Some("http://www.imsglobal.org/question/qti_v2p1/rptemplates/match_correct")
        );
    }
}

/// The cause that the words alone leave, where one thing happens at a time.
fn read_off(question: &str) -> &'static str {
    if question.contains("by less than 1°") {
        "Nothing"
    } else if question.contains("the true heading off the chart") {
        "Variation"
    } else if question.contains("straight again") {
        "Swirl"
    } else if question.contains("in a turn to the") {
        "The turn"
    } else if question.contains("gaining speed") || question.contains("losing speed") {
        "The change of speed"
    } else if question.contains("rough") {
        "Rough air"
    } else {
        "The aircraft's iron"
    }
}

#[test]
fn what_is_asked_in_words_can_be_answered_from_them() {
    for task in tasks(Kind::NameTheCause, 60).filter(|it| it.id.level == 1) {
        let answer = right(&task);
        let read = read_off(&task.question);
        assert!(answer.starts_with(read), "{} {answer}", task.question);
    }
    // Every figure that a rule or a closed form needs stands in the question: where, how it is
    // flown, and of a reading what is read.
    for task in tasks(Kind::Predict, 30).chain(tasks(Kind::Read, 30)) {
        let question = &task.question;
        assert!(question.starts_with("At latitude ") || question.starts_with("At the equator"));
        let turns = question.contains("of bank and") || question.contains("° of bank");
        let speed = question.contains("throttle") || question.contains(" speed from ");
        assert!(turns || speed, "{question}");
        assert!(question.contains(" kt"), "{question}");
        if task.id.kind == Kind::Read {
            assert!(question.contains("The compass reads "), "{question}");
        }
    }
    for task in tasks(Kind::Corrections, 30) {
        let question = &task.question;
        assert!(question.contains("Variation is") || question.contains("A swing found"));
    }
    assert!(
        Kind::ALL
            .into_iter()
            .all(|it| !(it.is_flown() && in_words(it, 1)))
    );
}
