//! The one place where the binary calls the writers of results.

use bedplate::model::Model;
use bedplate::model::isolator::Isolator;
use bedplate::report;
use bedplate::report::text::{Style, Topic};
use bedplate::study::check::Verdict;
use bedplate::study::evaluate::Evaluation;

use super::arguments::{ListFormat, ResultFormat, Subject};
use super::failure::Failure;

/// What is written, and how.
#[derive(Debug, Clone)]
pub(crate) struct Wanted<'a> {
    pub(crate) format: ResultFormat,
    /// Only these; all when empty. The other forms than text are always whole.
    pub(crate) only: &'a [Subject],
    pub(crate) colour: bool,
}

/// Results in one of their forms.
pub(crate) fn results(
    model: &Model,
    evaluation: &Evaluation,
    wanted: &Wanted<'_>,
) -> Result<String, Failure> {
    match wanted.format {
        ResultFormat::Text => {
            let chosen: Vec<Topic> = Topic::ALL
                .into_iter()
                .filter(|topic| {
                    wanted.only.is_empty() || wanted.only.iter().any(|s| topic_of(*s) == *topic)
                })
                .collect();
            Ok(report::text::full(
                model,
                evaluation,
                &chosen,
                style(wanted.colour),
            ))
        }
        ResultFormat::Json => {
            report::json::document(model, evaluation).map_err(|error| not_written("JSON", &error))
        }
        ResultFormat::Csv => {
            report::csv::document(model, evaluation).map_err(|error| not_written("CSV", &error))
        }
        ResultFormat::Html => Ok(page(model, evaluation)),
    }
}

/// One isolator of a model in one of its forms.
pub(crate) fn isolator(
    model: &Model,
    isolator: &Isolator,
    format: ListFormat,
    colour: bool,
) -> Result<String, Failure> {
    match format {
        ListFormat::Text => Ok(report::text::isolator(model, isolator, style(colour))),
        ListFormat::Json => {
            report::json::isolator(model, isolator).map_err(|error| not_written("JSON", &error))
        }
        ListFormat::Csv => {
            report::csv::isolator(model, isolator).map_err(|error| not_written("CSV", &error))
        }
    }
}

/// One joint in one of its forms, and how it came out.
#[derive(Debug)]
pub(crate) struct Answer {
    pub(crate) text: String,
    pub(crate) verdict: Verdict,
}

/// One joint of a model, by its place, in one of its forms.
pub(crate) fn joint(
    model: &Model,
    evaluation: &Evaluation,
    place: usize,
    format: ListFormat,
    colour: bool,
) -> Result<Answer, Failure> {
    let found = report::content::joints::each(model, evaluation)
        .find(|(_, _, result)| result.joint == place);
    let Some((place, joint, result)) = found else {
        return Err(Failure::plain("this joint was not evaluated"));
    };
    let text = match format {
        ListFormat::Text => report::text::joint(model, evaluation, place, style(colour)),
        ListFormat::Json => report::json::joint(model, evaluation, joint, result)
            .map_err(|error| not_written("JSON", &error))?,
        ListFormat::Csv => report::csv::joint(model, evaluation, place)
            .map_err(|error| not_written("CSV", &error))?,
    };
    Ok(Answer {
        text,
        verdict: report::content::joints::requirements::of_joint(evaluation, result),
    })
}

fn not_written(form: &str, error: &dyn std::error::Error) -> Failure {
    Failure::plain(format!("the results cannot be written as {form}: {error}"))
}

/// The report as one page.
pub(crate) fn page(model: &Model, evaluation: &Evaluation) -> String {
    report::html::document(model, evaluation)
}

/// What a fabricator can act on, on one screen.
pub(crate) fn summary(model: &Model, evaluation: &Evaluation, colour: bool) -> String {
    report::text::summary(model, evaluation, style(colour))
}

fn style(colour: bool) -> Style {
    if colour {
        Style::Coloured
    } else {
        Style::Plain
    }
}

fn topic_of(subject: Subject) -> Topic {
    match subject {
        Subject::Statics => Topic::Statics,
        Subject::Modes => Topic::Modes,
        Subject::Checks => Topic::Checks,
        Subject::Mass => Topic::Mass,
        Subject::Isolators => Topic::Isolators,
        Subject::Joints => Topic::Joints,
    }
}
