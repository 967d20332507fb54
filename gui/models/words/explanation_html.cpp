#include "models/words/explanation_html.hpp"

#include "base/error.hpp"
#include "base/sentences/typeset.hpp"
#include "document/shown_text.hpp"
#include "formula/uncertainty/budget_text.hpp"
#include "models/pictures/palette.hpp"
#include "models/words/formula_layout.hpp"
#include "models/words/place_text.hpp"
#include "models/words/result_label.hpp"
#include "models/words/unit_view.hpp"
#include "plan/evaluate/evaluate.hpp"
#include "records/keep/record_explanation.hpp"

namespace seamtakt::desk {

namespace {

class Words : public QObject {
  Q_OBJECT
};

QString row(const QString& label, const QString& value) {
  return QStringLiteral("<tr><td style=\"color:%3; padding-right:8px\">%1</td><td>%2</td></tr>")
      .arg(label, value, Palette::current().quiet.name());
}

/// A quantity in the unit that the formula works in.
QString formula_quantity(double value, const std::string& unit) {
  return (UnitView::shared().rounded(value, 6) + QStringLiteral(" ") + UnitView::readable(unit.c_str()))
      .toHtmlEscaped();
}

/// The same in the view's unit; empty where that is the formula's.
QString view_quantity(double value, const std::string& unit) {
  const UnitView& units = UnitView::shared();
  if (units.unitText(unit.c_str()) == UnitView::readable(unit.c_str())) return {};
  return units.quantityText(value, unit.c_str(), 4).toHtmlEscaped();
}

/// A text of a note in the shown language, its formulas as people read them.
QString note_text(const char* text) {
  return QString::fromStdString(typeset(text_view().word(text)));
}

/// "en-1011-2, Annex D": key and, where there is one, clause.
QString source_text(const FormulaNote& note) {
  const QString key = QString::fromUtf8(note.source_key), clause = note_text(note.clause);
  return clause.isEmpty() ? key : key + QStringLiteral(", ") + clause;
}

/// A row of a table: headings, or cells, the numbers to the right.
QString cells_html(const QStringList& cells, const char* tag) {
  QString html = QStringLiteral("<tr>");
  for (qsizetype i = 0; i < cells.size(); ++i)
    html += QStringLiteral("<%1 align=\"%2\" style=\"padding-right:8px\">%3</%1>")
                .arg(QLatin1String(tag), i == 0 ? QStringLiteral("left") : QStringLiteral("right"),
                     cells[i].toHtmlEscaped());
  return html + QStringLiteral("</tr>");
}

/// The uncertainty budget of a result in `unit`: what is said of it, and a row an input.
QString budget_html(const UncertaintyBudget& budget, const std::string& unit) {
  const auto number = [](double value, int digits) { return UnitView::shared().rounded(value, digits); };
  const auto with_unit = [](double value, int digits, const std::string& of) {
    return UnitView::shared().rounded(value, digits) + QStringLiteral(" ") + UnitView::readable(of.c_str());
  };
  QString html = QStringLiteral("<p style=\"margin-top:8px; margin-bottom:2px\">%1</p>")
                     .arg(QString::fromStdString(
                              sentence_text(budget_sentence(budget, unit.c_str()), text_view().in_si()))
                              .toHtmlEscaped());
  html += QStringLiteral("<table cellspacing=\"0\" cellpadding=\"1\">");
  html += cells_html(
      {shown_word("Input"_word.english()), shown_word("Value"_word.english()),
       shown_word("Standard uncertainty"_word.english()), shown_word("Distribution"_word.english()),
       shown_word("Sensitivity"_word.english()), shown_word("Contribution"_word.english()),
       shown_word("Share"_word.english()), shown_word("Degrees of freedom"_word.english())},
      "th");
  for (const BudgetInput& input : budget.inputs)
    html += cells_html(
        {shown_text(input.meaning), with_unit(input.value, 5, input.unit), with_unit(input.u, 3, input.unit),
         shown_word(word_of(input.distribution).english()), number(input.sensitivity, 4),
         with_unit(input.contribution, 3, unit), with_unit(input.share_pct, 3, "%"),
         QString::fromStdString(degrees_of_freedom_text(input.degrees_of_freedom, text_view()))},
        "td");
  return html + QStringLiteral("</table>");
}

QString one_html(const Explanation& explanation, bool first, int most_letters) {
  const FormulaNote& note = *explanation.note;
  const QString value = formula_quantity(explanation.result, explanation.unit),
                shown = view_quantity(explanation.result, explanation.unit);
  QString html = QStringLiteral(
                     "<p style=\"margin-top:%4px; margin-bottom:2px\"><b>%1</b>&nbsp; <span "
                     "style=\"font-size:%3\">%2</span></p>")
                     .arg(result_label(note.result).toHtmlEscaped(),
                          shown.isEmpty() ? value : shown + QStringLiteral(" = ") + value,
                          first ? QStringLiteral("large") : QStringLiteral("medium"),
                          first ? QStringLiteral("0") : QStringLiteral("18"));
  html += stacked_formula(QString::fromUtf8(note.symbols), most_letters);
  html += stacked_formula(QString::fromStdString(with_numbers(explanation)), most_letters);
  html += QStringLiteral("<table cellspacing=\"0\" cellpadding=\"1\">");
  for (const SymbolValue& symbol : explanation.inputs) {
    const QString shown_input = view_quantity(symbol.value, symbol.unit);
    html += row(symbol_html(QString::fromStdString(symbol.symbol)),
                QStringLiteral("%1%2 <span style=\"color:%4\">%3</span>")
                    .arg(formula_quantity(symbol.value, symbol.unit),
                         shown_input.isEmpty() ? QString() : QStringLiteral(" (%1)").arg(shown_input),
                         shown_text(symbol.meaning).toHtmlEscaped(), Palette::current().quiet.name()));
  }
  html += QStringLiteral("</table><table cellspacing=\"0\" cellpadding=\"1\" style=\"margin-top:4px\">");
  html += row(Words::tr("Source"), (source_text(note) + QStringLiteral(" (") +
                                    shown_word(to_string(note.basis)) + QStringLiteral(")"))
                                       .toHtmlEscaped());
  html += row(Words::tr("Holds"), note_text(note.range).toHtmlEscaped());
  html += row(Words::tr("Accuracy"), note_text(note.accuracy).toHtmlEscaped());
  html += QStringLiteral("</table>");
  if (explanation.budget) html += budget_html(*explanation.budget, explanation.unit);
  return html;
}

QString quiet_paragraph(const QString& text, int top_px = 0) {
  return QStringLiteral("<p style=\"margin-top:%3px; color:%2\">%1</p>")
      .arg(text.toHtmlEscaped(), Palette::current().quiet.name(), QString::number(top_px));
}

/// A number that was measured or counted, without a formula.
QString measured_html(const RecordExplanation& said) {
  const QString value =
      said.value ? UnitView::shared().quantityText(*said.value, said.unit.c_str(), 6) : QStringLiteral("–");
  return QStringLiteral("<p><b>%1</b>&nbsp; <span style=\"font-size:large\">%2</span></p>")
      .arg(result_label(said.key).toHtmlEscaped(), value.toHtmlEscaped());
}

}  // namespace

QString record_explanation_html(const PassRecord& record, const Plan& plan, const QString& key,
                                int most_letters) {
  const QString place = quiet_paragraph(place_text(record.place()));
  try {
    const RecordExplanation said = explain_pass(record, &plan, key.toStdString());
    const bool has_own = !said.formulas.empty() && said.formulas[0].note->result == said.key;
    QString html = place;
    if (!has_own) html += measured_html(said);
    for (std::size_t i = 0; i < said.formulas.size(); ++i) {
      if (i == 1) html += quiet_paragraph(Words::tr("It rests on"), 18);
      html += one_html(said.formulas[i], i == 0, most_letters);
    }
    html += quiet_paragraph(Words::tr("What was logged"), 18);
    for (const Sentence& sentence : said.basis())
      html += QStringLiteral("<p style=\"margin:2px 0\">%1</p>").arg(shown_text(sentence).toHtmlEscaped());
    return html;
  } catch (const InputError&) {
    return QStringLiteral("<p>%1</p>%2")
        .arg(Words::tr("Choose a number of the pass, such as its heat input.").toHtmlEscaped(), place);
  }
}

QString explanation_html(const Plan& plan, const QString& place, const QString& key, int most_letters) {
  const std::string name = key.section('.', -1).toStdString();
  try {
    const auto explanations = explain(plan, place.toStdString(), name);
    QString html = QStringLiteral("<p style=\"color:%2\">%1</p>")
                       .arg(place_text(place.toStdString()).toHtmlEscaped(), Palette::current().quiet.name());
    for (std::size_t i = 0; i < explanations.size(); ++i) {
      if (i == 1)
        html += QStringLiteral("<p style=\"margin-top:18px; color:%2\">%1</p>")
                    .arg(Words::tr("It rests on"), Palette::current().quiet.name());
      html += one_html(explanations[i], i == 0, most_letters);
    }
    return html;
  } catch (const InputError&) {
    return QStringLiteral("<p>%1</p><p style=\"color:%3\">%2</p>")
        .arg(Words::tr("%1 is given or counted: no formula stands behind it.")
                 .arg(result_label(name))
                 .toHtmlEscaped(),
             place_text(place.toStdString()).toHtmlEscaped(), Palette::current().quiet.name());
  }
}

QString explanation_tip(const Plan& plan, const QString& place, const QString& key) {
  try {
    const auto explanations = explain(plan, place.toStdString(), key.section('.', -1).toStdString());
    if (explanations.empty()) return {};
    const FormulaNote& note = *explanations[0].note;
    return plain_formula(QString::fromUtf8(note.symbols)) + QStringLiteral("\n") +
           plain_formula(QString::fromStdString(with_numbers(explanations[0]))) + QStringLiteral("\n") +
           source_text(note);
  } catch (const InputError&) {
    return {};
  }
}

}  // namespace seamtakt::desk

#include "explanation_html.moc"
