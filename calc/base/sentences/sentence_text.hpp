#pragma once

#include <string>

#include "base/sentences/language.hpp"
#include "base/sentences/sentence.hpp"
#include "base/units/unit_system.hpp"

namespace seamtakt {

/// In which language and units texts are shown.
class TextView {
 public:
  /// How units and operators are written: as files have them ("mm2", "C"), or as people read them ("mm²",
  /// "°C", a narrow space before the unit).
  enum class Typography { plain, readable };

  explicit TextView(const Language& language, UnitSystem units = UnitSystem::si,
                    Typography typography = Typography::readable)
      : language_(&language), units_(units), typography_(typography) {}

  /// What JSON results, logs and ledgers have.
  static const TextView& plain_english();

  const Language& language() const { return *language_; }
  UnitSystem units() const { return units_; }
  Typography typography() const { return typography_; }

  /// The same view with the units of files and formulas.
  TextView in_si() const {
    TextView view = *this;
    view.units_ = UnitSystem::si;
    return view;
  }

  /// The same view for pages and workbooks that people read: numbers have the decimal sign of the language.
  /// Without it they have a point, as what is typed and printed at the command line.
  TextView on_paper() const;

  /// A number given in `unit`, in the shown unit, without the unit.
  std::string number(const UnitValue& quantity) const;
  /// The number of a difference or an uncertainty of a quantity in `unit`: temperatures have no offset
  /// here.
  std::string difference(const UnitValue& quantity) const;
  /// The name of the unit in which values given in `unit` are shown.
  std::string unit(const char* unit) const;
  /// Number and unit.
  std::string quantity(const UnitValue& quantity) const;
  /// A word or phrase of the program, under its English text.
  std::string word(std::string_view english) const { return std::string(language_->word(english)); }
  std::string word(Word word) const { return this->word(word.english()); }
  /// A finding's source. What is around a standard's name and clause ("(recalled)", "plan limit") are words.
  std::string source(std::string_view english) const;

 private:
  std::string with_decimal_sign(std::string number) const;

  const Language* language_;
  UnitSystem units_;
  Typography typography_;
  bool decimal_comma_ = false;
};

/// The sentence as text. A sentence that the language lacks is English; a hole without argument is a fault of
/// the program: std::logic_error.
std::string sentence_text(const Sentence& sentence, const TextView& view);

}  // namespace seamtakt
