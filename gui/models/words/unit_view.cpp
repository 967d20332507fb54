#include "models/words/unit_view.hpp"

#include <charconv>

#include "base/error.hpp"
#include "document/shown_text.hpp"
#include "models/words/typed_numbers.hpp"

namespace seamtakt::desk {

namespace {

constexpr int typed_digits = 15;

bool holds_numbers(FieldKind kind) {
  return kind == FieldKind::number || kind == FieldKind::interval || kind == FieldKind::number_list ||
         kind == FieldKind::point || kind == FieldKind::path || kind == FieldKind::number_pairs ||
         kind == FieldKind::choice_or_number;
}

/// Whether blanks part its numbers.
bool is_point(FieldKind kind) {
  return kind == FieldKind::point || kind == FieldKind::path || kind == FieldKind::number_pairs;
}

/// Calls `change` on each piece between separators (',', ';' and "..", blanks too where they separate),
/// keeping the separators.
template <class Change>
std::string each_number(const std::string& text, bool blanks_part, Change change) {
  std::string result, piece;
  const auto finish = [&] {
    const std::size_t begin = piece.find_first_not_of(' ');
    if (begin == std::string::npos) {
      result += piece;
    } else {
      const std::size_t end = piece.find_last_not_of(' ') + 1;
      result += piece.substr(0, begin) + change(piece.substr(begin, end - begin)) + piece.substr(end);
    }
    piece.clear();
  };
  for (std::size_t i = 0; i < text.size(); ++i) {
    const bool dots = text.compare(i, 2, "..") == 0;
    const bool blank = blanks_part && text[i] == ' ';
    if (!dots && !blank && text[i] != ',' && text[i] != ';') {
      piece += text[i];
      continue;
    }
    finish();
    result += dots ? ".." : std::string(1, text[i]);
    if (dots) ++i;
  }
  finish();
  return result;
}

bool is_number(const std::string& text, double& value) {
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
  return error == std::errc() && end == text.data() + text.size();
}

}  // namespace

UnitView& UnitView::shared() {
  static UnitView view;
  return view;
}

void UnitView::setSystem(UnitSystem system) {
  if (system == system_) return;
  system_ = system;
  show_units(system);
  emit changed();
}

const Unit& UnitView::shown(const Unit& unit) const {
  return shown_unit(unit, system_);
}

QString UnitView::readable(const char* unit) {
  return QString::fromStdString(readable_unit(unit));
}

QString UnitView::unitText(const char* unit) const {
  const Unit* known = find_unit(unit);
  return readable(known ? shown(*known).name : unit);
}

double UnitView::toShown(double value, const char* unit) const {
  const Unit* known = find_unit(unit);
  return known ? convert(value, *known, shown(*known)) : value;
}

double UnitView::fromShown(double value, const char* unit) const {
  const Unit* known = find_unit(unit);
  return known ? convert(value, shown(*known), *known) : value;
}

QString UnitView::numberText(double value, const char* unit, int digits) const {
  return rounded(toShown(value, unit), digits > 0 ? digits : typed_digits);
}

QString UnitView::decimal(QString number) const {
  return has_decimal_comma_ ? number.replace(QLatin1Char('.'), QLatin1Char(',')) : number;
}

QString UnitView::rounded(double value, int digits) const {
  return decimal(QString::fromStdString(rounded_text(value, digits)));
}

QString UnitView::rangeText(const QString& lower, const QString& upper) const {
  if (upper.isEmpty()) return tr("from %1").arg(lower);
  return lower.isEmpty() ? tr("up to %1").arg(upper) : tr("%1 to %2").arg(lower, upper);
}

QString UnitView::quantityText(double value, const char* unit, int digits) const {
  const QString name = unitText(unit);
  const QString number = numberText(value, unit, digits);
  if (name.isEmpty()) return number;
  return name == QStringLiteral("°") ? number + name : number + QStringLiteral("\u202f") + name;
}

QString UnitView::columnText(const ColumnValue& value, const char* unit, int digits) const {
  if (const double* number = std::get_if<double>(&value)) return numberText(*number, unit, digits);
  if (const auto* pair = std::get_if<std::array<double, 2>>(&value))
    return rangeText(numberText((*pair)[0], unit, digits), numberText((*pair)[1], unit, digits));
  if (const int* number = std::get_if<int>(&value)) return QString::number(*number);
  if (const auto* count = std::get_if<std::uint64_t>(&value)) return QString::number(*count);
  if (const bool* truth = std::get_if<bool>(&value)) return *truth ? tr("yes") : tr("no");
  if (const auto* text = std::get_if<std::string_view>(&value))
    return QString::fromUtf8(text->data(), static_cast<qsizetype>(text->size()));
  return QStringLiteral("–");
}

std::string UnitView::inShownUnit(const std::string& text, const FieldInfo& field) const {
  const Unit* unit = find_unit(field.unit);
  if (!unit || !*field.unit || !holds_numbers(field.kind) || &shown(*unit) == unit) return text;
  return each_number(text, is_point(field.kind), [&](const std::string& piece) {
    double value = 0;
    if (!is_number(piece, value)) return piece;
    // Four digits read well; a field that was not typed in is never written back.
    return rounded_text(convert(value, *unit, shown(*unit)), 4);
  });
}

QString UnitView::fieldShown(const std::string& text, const FieldInfo& field) const {
  const QString shown =
      QString::fromStdString(shown_numbers(inShownUnit(text, field), field.kind, has_decimal_comma_));
  const qsizetype dots = shown.indexOf(QStringLiteral(".."));
  if (field.kind != FieldKind::interval || dots < 0) return shown;
  return rangeText(shown.left(dots).trimmed(), shown.mid(dots + 2).trimmed());
}

std::string UnitView::fieldTyped(const QString& typed, const FieldInfo& field) const {
  const std::string text = plain_numbers(typed.trimmed().toStdString(), field.kind, has_decimal_comma_);
  const Unit* unit = find_unit(field.unit);
  if (!holds_numbers(field.kind) || !unit || !*field.unit) return text;
  const Unit& bare = shown(*unit);
  return each_number(text, is_point(field.kind), [&](const std::string& piece) {
    double value = 0;
    if (&bare == unit && is_number(piece, value)) return piece;
    if (field.kind == FieldKind::choice_or_number && !is_number(piece, value) &&
        std::find(field.choices.begin(), field.choices.end(), piece) != field.choices.end())
      return piece;
    return rounded_text(convert(parse_quantity(piece, bare, std::string(field.key)), bare, *unit),
                        typed_digits);
  });
}

}  // namespace seamtakt::desk
