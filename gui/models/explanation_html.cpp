#include "models/explanation_html.hpp"

#include "base/error.hpp"
#include "models/formula_layout.hpp"
#include "models/grid_model.hpp"
#include "models/palette.hpp"
#include "models/unit_view.hpp"
#include "plan/evaluate.hpp"

namespace seamtakt::desk {

namespace {

class Words : public QObject {
  Q_OBJECT
};

QString text(const std::string& utf8) {
  return QString::fromStdString(utf8).toHtmlEscaped();
}

QString row(const QString& label, const QString& value) {
  return QStringLiteral("<tr><td style=\"color:%3; padding-right:8px\">%1</td><td>%2</td></tr>")
      .arg(label, value, Palette::current().quiet.name());
}

/// "heat_input_kJ_mm" -> "Heat input": the label of the derived value's column.
QString label_of(const char* key) {
  if (const auto* column = find_column(pass_columns(), key)) return core_label(column->label);
  if (const auto* column = find_column(seam_columns(), key)) return core_label(column->label);
  // A value on the way to one of the tables': its key without the unit, as words.
  std::string words = key;
  if (unit_of_key(key))
    for (const char* suffix : {"_kJ_mm", "_mm_s", "_m_min", "_g_cm3", "_kg_h"})
      if (words.ends_with(suffix)) words.resize(words.size() - std::string_view(suffix).size());
  if (const std::size_t last = words.rfind('_');
      words == key && unit_of_key(key) && last != std::string::npos)
    words.resize(last);
  for (char& letter : words)
    if (letter == '_') letter = ' ';
  return core_label(words.c_str());
}

QString one_html(const Explanation& explanation, bool first) {
  const FormulaNote& note = *explanation.note;
  const QString value = QString::fromStdString(rounded_text(explanation.result, 6)) + QStringLiteral(" ") +
                        UnitView::readable(explanation.unit.c_str());
  QString html = QStringLiteral(
                     "<p style=\"margin-top:%4px; margin-bottom:2px\"><b>%1</b>&nbsp; <span "
                     "style=\"font-size:%3\">%2</span></p>")
                     .arg(label_of(note.result), value.toHtmlEscaped(), first ? "large" : "medium")
                     .arg(first ? 0 : 18);
  html += stacked_formula(QString::fromUtf8(note.symbols));
  html += stacked_formula(QString::fromStdString(with_numbers(explanation)));
  html += QStringLiteral("<table cellspacing=\"0\" cellpadding=\"1\">");
  for (const SymbolValue& symbol : explanation.inputs)
    html += row(
        symbol_html(QString::fromStdString(symbol.symbol)),
        QStringLiteral("%1 %2 <span style=\"color:%4\">%3</span>")
            .arg(text(rounded_text(symbol.value, 6)), UnitView::readable(symbol.unit.c_str()).toHtmlEscaped(),
                 text(symbol.meaning), Palette::current().quiet.name()));
  html += QStringLiteral("</table><table cellspacing=\"0\" cellpadding=\"1\" style=\"margin-top:4px\">");
  html += row(Words::tr("Source"),
              text(std::string(note.source_key) + ", " + note.clause + " (" + to_string(note.basis) + ")"));
  html += row(Words::tr("Holds"), text(note.range));
  html += row(Words::tr("Accuracy"), text(note.accuracy));
  return html + QStringLiteral("</table>");
}

}  // namespace

QString formula_html(const QString& formula) {
  return stacked_formula(formula);
}

QString explanation_html(const Plan& plan, const QString& place, const QString& key) {
  const std::string name = key.section('.', -1).toStdString();
  try {
    const auto explanations = explain(plan, place.toStdString(), name);
    QString html = QStringLiteral("<p style=\"color:%2\">%1</p>")
                       .arg(place.toHtmlEscaped(), Palette::current().quiet.name());
    for (std::size_t i = 0; i < explanations.size(); ++i) {
      if (i == 1)
        html += QStringLiteral("<p style=\"margin-top:18px; color:%2\">%1</p>")
                    .arg(Words::tr("It rests on"), Palette::current().quiet.name());
      html += one_html(explanations[i], i == 0);
    }
    return html;
  } catch (const InputError&) {
    return QStringLiteral("<p>%1</p><p style=\"color:%3\">%2</p>")
        .arg(Words::tr("%1 is given or counted: no formula stands behind it.")
                 .arg(label_of(name.c_str()))
                 .toHtmlEscaped(),
             place.toHtmlEscaped(), Palette::current().quiet.name());
  }
}

QString explanation_tip(const Plan& plan, const QString& place, const QString& key) {
  try {
    const auto explanations = explain(plan, place.toStdString(), key.section('.', -1).toStdString());
    if (explanations.empty()) return {};
    const FormulaNote& note = *explanations[0].note;
    return QString::fromUtf8(note.symbols) + QStringLiteral("\n") +
           QString::fromStdString(with_numbers(explanations[0])) + QStringLiteral("\n") +
           QString::fromUtf8(note.source_key) + QStringLiteral(", ") + QString::fromUtf8(note.clause);
  } catch (const InputError&) {
    return {};
  }
}

}  // namespace seamtakt::desk

#include "explanation_html.moc"
