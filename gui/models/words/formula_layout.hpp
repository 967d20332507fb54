#pragma once

#include <QString>

namespace seamtakt::desk {

/// Splits "a = b/c" style formulas at the operators of least strength and sets quotients as stacked fractions
/// in rich text (a two-row table), on several lines where it is wider than so many letters. Text that can't
/// be read as a formula comes back as it is, escaped.
QString stacked_formula(const QString& formula, int most_letters = 60);

/// A formula as one line with the decimal sign of the view: "Q = 0,8*1,0168", "max(a; b)".
QString plain_formula(const QString& formula);

/// One name of a formula as rich text: "t8/5" and "T_0" with lowered index, "lambda" as the letter.
QString symbol_html(const QString& name);

}  // namespace seamtakt::desk
