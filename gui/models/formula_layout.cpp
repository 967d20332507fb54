#include "models/formula_layout.hpp"

#include <QHash>
#include <vector>

namespace seamtakt::desk {

namespace {

/// A piece of a laid-out formula; a tall one holds a fraction and stands as a table.
struct Piece {
  QString html;
  bool tall = false;
};

const QHash<QString, QString>& letters() {
  static const QHash<QString, QString> names = {
      {"pi", "π"},    {"lambda", "λ"},
      {"alpha", "α"}, {"beta", "β"},
      {"rho", "ρ"},   {"eta", "η"},
      {"psi", "ψ"},   {"sigma", "σ"},
      {"tau", "τ"},   {"theta", "θ"},
      {"kappa", "κ"}, {"sqrt", "√"},
      {"sum", "Σ"},   {"sum_i", "Σ<sub>i</sub>"},
      {"Delta", "Δ"}, {"rho_c", "ρc"},
      {"phi", "φ"},
  };
  return names;
}

QString cell(const QString& html, const QString& style = {}) {
  return QStringLiteral("<td align=\"center\" valign=\"middle\" style=\"%2\">%1</td>").arg(html, style);
}

QString as_table(const std::vector<Piece>& row) {
  QString html = QStringLiteral("<table cellspacing=\"0\" cellpadding=\"1\"><tr>");
  for (const Piece& piece : row) html += cell(piece.html);
  return html + QStringLiteral("</tr></table>");
}

Piece joined(const std::vector<Piece>& row) {
  bool tall = false;
  for (const Piece& piece : row) tall = tall || piece.tall;
  if (tall) return {as_table(row), true};
  QString html;
  for (const Piece& piece : row) html += piece.html;
  return {html, false};
}

Piece fraction(const Piece& above, const Piece& below) {
  return {QStringLiteral("<table cellspacing=\"0\" cellpadding=\"1\"><tr>%1</tr><tr>%2</tr></table>")
              .arg(cell(above.html, QStringLiteral("border-bottom-width:1px; border-bottom-style:solid;")),
                   cell(below.html)),
          true};
}

/// Reads sum, product, power, atom; what it can't read is taken character by character, so that nothing is
/// lost.
class Reader {
 public:
  explicit Reader(const QString& text) : text_(text) {}

  Piece all() {
    std::vector<Piece> row;
    while (at_ < text_.size()) {
      row.push_back(sum());
      if (at_ < text_.size()) row.push_back({text_.mid(at_++, 1).toHtmlEscaped(), false});
    }
    return joined(row);
  }

 private:
  void blanks() {
    while (at_ < text_.size() && text_[at_] == ' ') ++at_;
  }
  QChar next() {
    blanks();
    return at_ < text_.size() ? text_[at_] : QChar();
  }

  Piece sum() {
    std::vector<Piece> row = {product()};
    for (QChar sign = next(); sign == '+' || sign == '-' || sign == '=' || sign == ','; sign = next()) {
      ++at_;
      row.push_back({QStringLiteral(" %1 ").arg(sign == '-' ? QChar(0x2212) : sign), false});
      row.push_back(product());
    }
    return joined(row);
  }

  Piece product() {
    std::vector<Piece> row = {power()};
    for (QChar sign = next(); sign == '*' || sign == '/'; sign = next()) {
      ++at_;
      if (sign == '/') {
        strip_ = true;
        const Piece below = power();
        // Everything multiplied so far stands above the bar.
        row = {fraction(joined(row), below)};
      } else {
        row.push_back({QStringLiteral("·"), false});
        row.push_back(power());
      }
    }
    return joined(row);
  }

  Piece power() {
    const bool strip = std::exchange(strip_, false);
    const bool has_brackets = next() == '(';
    Piece base = atom(strip);
    if (next() != '^') return base;
    ++at_;
    // The whole denominator is the power, not what stands in its brackets: 1/(a - b)^2.
    if (strip && has_brackets) base = joined({{QStringLiteral("("), false}, base, {QStringLiteral(")"), false}});
    const Piece exponent = atom(true);
    return {exponent.tall ? as_table({base, {QStringLiteral("^"), false}, exponent})
                          : base.html + QStringLiteral("<sup>") + exponent.html + QStringLiteral("</sup>"),
            base.tall || exponent.tall};
  }

  Piece bracketed(bool strip) {
    ++at_;
    const Piece inner = sum();
    if (next() == ')') ++at_;
    if (strip) return inner;
    return joined({{QStringLiteral("("), false}, inner, {QStringLiteral(")"), false}});
  }

  Piece atom(bool strip) {
    const QChar c = next();
    if (c == '(') return bracketed(strip);
    if (c == '-') {
      ++at_;
      return joined({{QStringLiteral("−"), false}, atom(false)});
    }
    qsizetype end = at_;
    while (end < text_.size() &&
           (text_[end].isLetterOrNumber() || text_[end] == '_' || text_[end] == '.' || text_[end] == '\''))
      ++end;
    if (end == at_)
      return {at_ < text_.size() && !QStringLiteral(")+-*/=,^ ").contains(c)
                  ? text_.mid(at_++, 1).toHtmlEscaped()
                  : QString(),
              false};
    const QString name = text_.mid(at_, end - at_);
    at_ = end;
    const Piece symbol{symbol_html(name), false};
    if (at_ < text_.size() && text_[at_] == '(') return joined({symbol, bracketed(false)});
    return symbol;
  }

  const QString& text_;
  qsizetype at_ = 0;
  bool strip_ = false;  ///< brackets round a whole denominator aren't needed
};

}  // namespace

QString symbol_html(const QString& name) {
  const auto letter = letters().constFind(name);
  if (letter != letters().constEnd()) return *letter;
  const qsizetype underscore = name.indexOf('_');
  if (underscore <= 0)
    return name[0].isDigit() ? name.toHtmlEscaped() : QStringLiteral("<i>%1</i>").arg(name.toHtmlEscaped());
  const QString base = name.left(underscore);
  const auto greek = letters().constFind(base);
  return QStringLiteral("<i>%1</i><sub>%2</sub>")
      .arg(greek != letters().constEnd() ? *greek : base.toHtmlEscaped(),
           name.mid(underscore + 1).toHtmlEscaped());
}

QString stacked_formula(const QString& formula) {
  const Piece whole = Reader(formula).all();
  return whole.tall ? whole.html : QStringLiteral("<p>%1</p>").arg(whole.html);
}

}  // namespace seamtakt::desk
