#include "models/words/formula_layout.hpp"

#include <QHash>
#include <QRegularExpression>
#include <algorithm>
#include <vector>

#include "models/pictures/palette.hpp"
#include "models/words/unit_view.hpp"

namespace seamtakt::desk {

namespace {

/// A piece of a laid-out formula; a tall one holds a fraction and is laid out as a table.
struct Piece {
  QString html;
  bool tall = false;
  qsizetype letters = 0;  ///< as wide as so many
};

/// Text of one line, some of it in tags.
Piece line(const QString& html) {
  static const QRegularExpression tag(QStringLiteral("<[^>]*>"));
  return {html, false, QString(html).remove(tag).size()};
}

/// Arguments are told apart by semicolons where the decimal sign is a comma.
Piece sign_piece(QChar sign) {
  if (sign == ',' && UnitView::shared().hasDecimalComma()) sign = ';';
  return line(QStringLiteral(" %1 ").arg(sign == '-' ? QChar(0x2212) : sign));
}

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

QString html_cell(const QString& html, const QString& style = {}) {
  return QStringLiteral("<td align=\"center\" valign=\"middle\" style=\"white-space:nowrap; %2\">%1</td>")
      .arg(html, style);
}

QString as_table(const std::vector<Piece>& row) {
  QString html = QStringLiteral("<table cellspacing=\"0\" cellpadding=\"1\"><tr>");
  for (const Piece& piece : row) html += html_cell(piece.html);
  return html + QStringLiteral("</tr></table>");
}

Piece joined_pieces(const std::vector<Piece>& row) {
  Piece whole;
  for (const Piece& piece : row) {
    whole.tall = whole.tall || piece.tall;
    whole.letters += piece.letters;
    whole.html += piece.html;
  }
  if (whole.tall) whole.html = as_table(row);
  return whole;
}

Piece fraction(const Piece& above, const Piece& below) {
  return {
      QStringLiteral("<table cellspacing=\"0\" cellpadding=\"1\"><tr>%1</tr><tr>%2</tr></table>")
          .arg(html_cell(above.html,
                         QStringLiteral(
                             "border-bottom-width:1px; border-bottom-style:solid; border-bottom-color:%1;")
                             .arg(Palette::current().ink.name())),
               html_cell(below.html)),
      true, std::max(above.letters, below.letters)};
}

Piece in_brackets(const Piece& inner) {
  return joined_pieces({line(QStringLiteral("(")), inner, line(QStringLiteral(")"))});
}

/// Lines of at most so many letters where the pieces allow it; a new one begins with a sign.
std::vector<std::vector<Piece>> lines_of(const std::vector<Piece>& pieces, qsizetype most_letters) {
  static const QRegularExpression sign(QStringLiteral("^( . |·)$"));
  std::vector<std::vector<Piece>> lines(1);
  qsizetype letters = 0;
  for (std::size_t i = 0; i < pieces.size(); ++i) {
    const qsizetype with_next = pieces[i].letters + (i + 1 < pieces.size() ? pieces[i + 1].letters : 0);
    if (sign.match(pieces[i].html).hasMatch() && letters > 0 && lines.back().size() > 2 &&
        letters + with_next > most_letters) {
      lines.emplace_back(1, line(QStringLiteral("&nbsp;&nbsp;&nbsp;")));
      letters = 3;
    }
    lines.back().push_back(pieces[i]);
    letters += pieces[i].letters;
  }
  return lines;
}

/// Reads sum, product, power, atom; what it can't read is taken character by character, so that nothing is
/// lost.
class Reader {
 public:
  explicit Reader(const QString& text) : text_(text) {}

  /// The whole formula in pieces that may be on lines of their own; signs are pieces, too.
  std::vector<Piece> all() {
    std::vector<Piece> row;
    while (at_ < text_.size()) {
      const std::vector<Piece> more = sum_pieces();
      row.insert(row.end(), more.begin(), more.end());
      if (at_ < text_.size()) row.push_back(line(text_.mid(at_++, 1).toHtmlEscaped()));
    }
    return row;
  }

 private:
  void blanks() {
    while (at_ < text_.size() && text_[at_] == ' ') ++at_;
  }
  QChar next() {
    blanks();
    return at_ < text_.size() ? text_[at_] : QChar();
  }

  Piece sum() { return joined_pieces(sum_pieces()); }

  std::vector<Piece> sum_pieces() {
    std::vector<Piece> row = product();
    for (QChar sign = next(); sign == '+' || sign == '-' || sign == '=' || sign == ','; sign = next()) {
      ++at_;
      row.push_back(sign_piece(sign));
      const std::vector<Piece> more = product();
      row.insert(row.end(), more.begin(), more.end());
    }
    return row;
  }

  std::vector<Piece> product() {
    std::vector<Piece> row = {power()};
    for (QChar sign = next(); sign == '*' || sign == '/'; sign = next()) {
      ++at_;
      if (sign == '/') {
        strip_ = true;
        const Piece below = power();
        // Everything multiplied so far is above the bar.
        row = {fraction(joined_pieces(row), below)};
      } else {
        row.push_back(line(QStringLiteral("·")));
        row.push_back(power());
      }
    }
    return row;
  }

  Piece power() {
    const bool strip = std::exchange(strip_, false);
    const bool has_brackets = next() == '(';
    Piece base = atom(strip);
    if (next() != '^') return base;
    ++at_;
    // The whole denominator is the power, not only the part in brackets: 1/(a - b)^2.
    if (strip && has_brackets) base = in_brackets(base);
    const Piece exponent = atom(true);
    return {exponent.tall ? as_table({base, line(QStringLiteral("^")), exponent})
                          : base.html + QStringLiteral("<sup>") + exponent.html + QStringLiteral("</sup>"),
            base.tall || exponent.tall, base.letters + exponent.letters};
  }

  Piece bracketed(bool strip) {
    ++at_;
    const Piece inner = sum();
    if (next() == ')') ++at_;
    if (strip) return inner;
    return in_brackets(inner);
  }

  Piece atom(bool strip) {
    const QChar c = next();
    if (c == '(') return bracketed(strip);
    if (c == '-') {
      ++at_;
      return joined_pieces({line(QStringLiteral("−")), atom(false)});
    }
    qsizetype end = at_;
    while (end < text_.size() &&
           (text_[end].isLetterOrNumber() || text_[end] == '_' || text_[end] == '.' || text_[end] == '\''))
      ++end;
    if (end == at_)
      return line(at_ < text_.size() && !QStringLiteral(")+-*/=,^ ").contains(c)
                      ? text_.mid(at_++, 1).toHtmlEscaped()
                      : QString());
    const QString name = text_.mid(at_, end - at_);
    at_ = end;
    const Piece symbol = line(symbol_html(name));
    if (at_ < text_.size() && text_[at_] == '(') return joined_pieces({symbol, bracketed(false)});
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
    return name[0].isDigit() ? plain_formula(name).toHtmlEscaped()
                             : QStringLiteral("<i>%1</i>").arg(name.toHtmlEscaped());
  const QString base = name.left(underscore);
  const auto greek = letters().constFind(base);
  return QStringLiteral("<i>%1</i><sub>%2</sub>")
      .arg(greek != letters().constEnd() ? *greek : base.toHtmlEscaped(),
           name.mid(underscore + 1).toHtmlEscaped());
}

QString plain_formula(const QString& formula) {
  if (!UnitView::shared().hasDecimalComma()) return formula;
  static const QRegularExpression point(QStringLiteral("(?<![\\w.])(\\d+)\\.(?=\\d)"));
  QString text = formula;
  return text.replace(QLatin1Char(','), QLatin1Char(';')).replace(point, QStringLiteral("\\1,"));
}

QString stacked_formula(const QString& formula, int most_letters) {
  QString html;
  for (const auto& pieces : lines_of(Reader(formula).all(), most_letters)) {
    const Piece whole = joined_pieces(pieces);
    html += whole.tall ? whole.html : QStringLiteral("<p>%1</p>").arg(whole.html);
  }
  return html;
}

}  // namespace seamtakt::desk
