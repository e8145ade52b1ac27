//! Tasks as a package of questions (QTI), for course platforms.
//!
//! Source: *IMS Question & Test Interoperability* 2.1, final (IMS Global, now 1EdTech, 2012), and
//! *IMS Content Packaging* 1.2. Of the versions, 2.1 is taken: what reads 2.2 reads it too, and
//! more platforms import it (common practice, no source); 2.2 adds nothing that is used here. Every
//! question is marked by the standard's own template, `match_correct`, which platforms know by its
//! name; a package therefore holds no explanations, as those would need rules of their own.
//!
//! Only what can be asked in words is in it: see [`in_words`].

use super::identifier;
use super::set::PracticeSet;
use super::{Kind, Task};
use quick_xml::Writer;
use quick_xml::events::{BytesDecl, BytesText, Event};
use std::io::{self, Cursor, Write};
use zip::ZipWriter;
use zip::write::SimpleFileOptions;

const QTI: &str = "http://www.imsglobal.org/xsd/imsqti_v2p1";
const QTI_SCHEMA: &str = "http://www.imsglobal.org/xsd/imsqti_v2p1 \
                          http://www.imsglobal.org/xsd/qti/qtiv2p1/imsqti_v2p1.xsd";
const PACKAGE: &str = "http://www.imsglobal.org/xsd/imscp_v1p1";
const PACKAGE_SCHEMA: &str = "http://www.imsglobal.org/xsd/imscp_v1p1 \
     http://www.imsglobal.org/xsd/qti/qtiv2p1/qtiv2p1_imscpv1p2_v1p0.xsd";
const INSTANCE: &str = "http://www.w3.org/2001/XMLSchema-instance";
const MATCH_CORRECT: &str = "http://www.imsglobal.org/question/qti_v2p1/rptemplates/match_correct";
/// The file of the test.
const TEST: &str = "test.xml";

/// What is written of XML or of the package.
type Written = io::Result<()>;
type Xml = Writer<Vec<u8>>;

/// Whether all that is needed for the answer stands in the question.
///
/// Flown tasks are not asked at all but flown. The cause of an error is read from the words alone
/// at level 1, where one thing happens at a time; beyond it several do, and which of them is most
/// of the error shows in the motion only. All other choices are.
pub fn in_words(kind: Kind, level: u8) -> bool {
    match kind {
        Kind::Predict | Kind::Read | Kind::Corrections => true,
        Kind::NameTheCause => level == 1,
        Kind::RollOut | Kind::TimedTurn | Kind::HoldHeading | Kind::SetGyro => false,
    }
}

/// The package of a set's tasks as the bytes of a ZIP file; those that are not asked
/// [`in_words`] are left out, and there must be one that is.
///
/// It is stored without compression and with the sizes before the contents, so that what reads it
/// as a stream can.
///
/// # Errors
/// None that is known: it is written to memory.
pub fn package(set: &PracticeSet, tasks: &[Task]) -> io::Result<Vec<u8>> {
    let asked = tasks.iter().filter(|it| in_words(it.id.kind, it.id.level));
    let items: Vec<(String, &Task)> = asked
        .zip(1..)
        .map(|(task, number)| (format!("task-{number:03}"), task))
        .collect();
    let names: Vec<&str> = items.iter().map(|(name, _)| name.as_str()).collect();
    let title = if set.title.is_empty() {
        "Dipwise"
    } else {
        &set.title
    };
    // Platforms take what has the name of something they have for the same thing.
    let own = identifier::of_text(&set.to_json());
    let mut package = ZipWriter::new(Cursor::new(Vec::new()));
    let mut add = |name: &str, xml: Vec<u8>| {
        package.start_file(name, SimpleFileOptions::default())?;
        package.write_all(&xml)
    };
    // The manifest first: what reads a stream finds it at once.
    add(
        "imsmanifest.xml",
        document(|xml| manifest(xml, &own, &names))?,
    )?;
    add(
        TEST,
        document(|xml| test(xml, &own, title, set.time_limit_s, &names))?,
    )?;
    for (name, task) in &items {
        add(&file(name), document(|xml| item(xml, name, task))?)?;
    }
    Ok(package.finish()?.into_inner())
}

fn file(name: &str) -> String {
    format!("{name}.xml")
}

fn document(write: impl FnOnce(&mut Xml) -> Written) -> io::Result<Vec<u8>> {
    let mut xml = Writer::new_with_indent(Vec::new(), b' ', 2);
    xml.write_event(Event::Decl(BytesDecl::new("1.0", Some("UTF-8"), None)))?;
    write(&mut xml)?;
    Ok(xml.into_inner())
}

/// An element with attributes and what stands in it.
fn element(
    xml: &mut Xml,
    name: &str,
    attributes: &[(&str, &str)],
    inner: impl FnOnce(&mut Xml) -> Written,
) -> Written {
    let element = xml.create_element(name);
    let element = element.with_attributes(attributes.iter().copied());
    element.write_inner_content(inner).map(drop)
}

/// An element with nothing in it.
fn empty(xml: &mut Xml, name: &str, attributes: &[(&str, &str)]) -> Written {
    let element = xml.create_element(name);
    let element = element.with_attributes(attributes.iter().copied());
    element.write_empty().map(drop)
}

/// An element with text in it.
fn text(xml: &mut Xml, name: &str, attributes: &[(&str, &str)], text: &str) -> Written {
    let element = xml.create_element(name);
    let element = element.with_attributes(attributes.iter().copied());
    element.write_text_content(BytesText::new(text)).map(drop)
}

/// The manifest (*Content Packaging* 1.2, 4.1; the resource types of QTI 2.1, *Integration Guide*).
fn manifest(xml: &mut Xml, own: &str, items: &[&str]) -> Written {
    let identifier = format!("package-{own}");
    let attributes = [
        ("xmlns", PACKAGE),
        ("xmlns:xsi", INSTANCE),
        ("xsi:schemaLocation", PACKAGE_SCHEMA),
        ("identifier", identifier.as_str()),
    ];
    element(xml, "manifest", &attributes, |xml| {
        element(xml, "metadata", &[], |xml| {
            text(xml, "schema", &[], "QTIv2.1 Package")?;
            text(xml, "schemaversion", &[], "1.0.0")
        })?;
        empty(xml, "organizations", &[])?;
        element(xml, "resources", &[], |xml| {
            resource(xml, "test", "imsqti_test_xmlv2p1", items)?;
            for item in items {
                resource(xml, item, "imsqti_item_xmlv2p1", &[])?;
            }
            Ok(())
        })
    })
}

fn resource(xml: &mut Xml, name: &str, kind: &str, needs: &[&str]) -> Written {
    let href = file(name);
    let identifier = resource_name(name);
    let attributes = [
        ("identifier", identifier.as_str()),
        ("type", kind),
        ("href", &href),
    ];
    element(xml, "resource", &attributes, |xml| {
        empty(xml, "file", &[("href", &href)])?;
        for need in needs {
            empty(
                xml,
                "dependency",
                &[("identifierref", &resource_name(need))],
            )?;
        }
        Ok(())
    })
}

fn resource_name(name: &str) -> String {
    format!("resource-{name}")
}

/// The test: all tasks in one section, in their order (*Information Model*, 2 and 3).
fn test(
    xml: &mut Xml,
    own: &str,
    title: &str,
    time_limit_s: Option<f64>,
    items: &[&str],
) -> Written {
    let identifier = format!("test-{own}");
    let attributes = [
        ("xmlns", QTI),
        ("xmlns:xsi", INSTANCE),
        ("xsi:schemaLocation", QTI_SCHEMA),
        ("identifier", identifier.as_str()),
        ("title", title),
        ("toolName", "Dipwise"),
    ];
    element(xml, "assessmentTest", &attributes, |xml| {
        if let Some(limit) = time_limit_s {
            empty(xml, "timeLimits", &[("maxTime", &limit.to_string())])?;
        }
        let part = [
            ("identifier", "part"),
            ("navigationMode", "linear"),
            ("submissionMode", "individual"),
        ];
        element(xml, "testPart", &part, |xml| {
            let section = [
                ("identifier", "section"),
                ("title", title),
                ("visible", "true"),
            ];
            element(xml, "assessmentSection", &section, |xml| {
                for item in items {
                    let href = file(item);
                    empty(
                        xml,
                        "assessmentItemRef",
                        &[("identifier", item), ("href", &href)],
                    )?;
                }
                Ok(())
            })
        })
    })
}

/// A task: a choice, marked by whether it is the right one (*Information Model*, 4 to 8).
fn item(xml: &mut Xml, name: &str, task: &Task) -> Written {
    let title = format!("{}: {}", name.replace('-', " "), task.id.kind.name());
    let identifier = format!("item-{}", identifier::of_text(&task.id.to_json()));
    let attributes = [
        ("xmlns", QTI),
        ("xmlns:xsi", INSTANCE),
        ("xsi:schemaLocation", QTI_SCHEMA),
        ("identifier", &identifier),
        ("title", &title),
        ("adaptive", "false"),
        ("timeDependent", "false"),
        ("xml:lang", "en"),
        ("toolName", "Dipwise"),
    ];
    element(xml, "assessmentItem", &attributes, |xml| {
        let response = [
            ("identifier", "RESPONSE"),
            ("cardinality", "single"),
            ("baseType", "identifier"),
        ];
        element(xml, "responseDeclaration", &response, |xml| {
            element(xml, "correctResponse", &[], |xml| {
                let right = task.choices.iter().position(|it| it.right);
                right.map_or(Ok(()), |right| text(xml, "value", &[], &choice(right)))
            })
        })?;
        let score = [
            ("identifier", "SCORE"),
            ("cardinality", "single"),
            ("baseType", "float"),
        ];
        element(xml, "outcomeDeclaration", &score, |xml| {
            element(xml, "defaultValue", &[], |xml| text(xml, "value", &[], "0"))
        })?;
        element(xml, "itemBody", &[], |xml| {
            let interaction = [
                ("responseIdentifier", "RESPONSE"),
                ("shuffle", "false"),
                ("maxChoices", "1"),
            ];
            element(xml, "choiceInteraction", &interaction, |xml| {
                text(xml, "prompt", &[], &task.question)?;
                for (at, it) in task.choices.iter().enumerate() {
                    let identifier = choice(at);
                    text(
                        xml,
                        "simpleChoice",
                        &[("identifier", &identifier)],
                        &it.text,
                    )?;
                }
                Ok(())
            })
        })?;
        empty(xml, "responseProcessing", &[("template", MATCH_CORRECT)])
    })
}

fn choice(at: usize) -> String {
    format!("choice-{}", at + 1)
}
