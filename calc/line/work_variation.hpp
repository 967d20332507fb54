#pragma once

#include <cstdint>
#include <vector>

namespace seamtakt {

struct LineModel;

/// How a stage's time for a unit varies: a factor of mean 1 on its time.
class WorkVariation {
 public:
  /// Always the same.
  WorkVariation() = default;
  /// Log-normal with standard deviation / mean = cv: exp(sigma z - sigma^2/2), sigma^2 = ln(1 + cv^2), z
  /// standard normal. cv of 0 or more. Source: moments of the log-normal distribution, recalled.
  static WorkVariation log_normal(double cv);
  /// Triangular, by the inverse of its distribution function, over the mean (least + usual + most)/3. Rising,
  /// most above 0. Source: triangular distribution, recalled.
  static WorkVariation triangular(double least, double usual, double most);

  bool is_constant() const { return kind_ == Kind::constant; }
  /// The factor at a share u of (0, 1]: it rises with u, so that equal draws stay equal in rank.
  double factor(double u) const;

 private:
  enum class Kind { constant, log_normal, triangular };
  Kind kind_ = Kind::constant;
  double sigma_ = 0;
  double least_ = 1, usual_ = 1, most_ = 1;  ///< over the mean
};

/// z of which a share p of a standard normal distribution is below; p from 2^-53 to 1, where 1 is taken as
/// 1 - 2^-53. Source: Wichura, Algorithm AS 241, Applied Statistics 37 (1988) 477-484, PPND16: relative error
/// about 1e-16.
double normal_quantile(double p);

/// Whether a stage's work varies by chance.
bool work_varies(const LineModel& model);

/// The model's work times as they are drawn: each a mean times the factor of its stage. The draw depends on
/// seed, stage and unit alone, so it is the same at each visit, and in a line that is changed elsewhere.
/// Rework doesn't vary.
std::vector<double> drawn_work_s(const LineModel& model, std::uint64_t seed);

}  // namespace seamtakt
