#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <random>

#include "audit_fixture.hpp"
#include "base/error.hpp"
#include "formula/wire/melting.hpp"
#include "records/learn/learn.hpp"
#include "records/learn/robust_fit.hpp"

namespace seamtakt::test {
namespace {

/// The line through rows (x, y).
FitModel line_through(const std::vector<double>& x, const std::vector<double>& y) {
  return [&x, &y](const Eigen::VectorXd& p, Eigen::VectorXd& residual, Eigen::MatrixXd& jacobian) {
    const auto n = static_cast<Eigen::Index>(x.size());
    residual.resize(n);
    jacobian.resize(n, 2);
    for (Eigen::Index i = 0; i < n; ++i) {
      const auto k = static_cast<std::size_t>(i);
      residual[i] = y[k] - p[0] - p[1] * x[k];
      jacobian(i, 0) = -1;
      jacobian(i, 1) = -x[k];
    }
  };
}

TEST(RobustFit, IntervalsHoldTheTruthAsOftenAsTheySayAndWildRowsDoNotMatter) {
  std::mt19937 random(5);
  std::normal_distribution<double> noise(0, 0.3);
  for (const bool wild : {false, true}) {
    int holds = 0;
    for (int trial = 0; trial < 400; ++trial) {
      std::vector<double> x, y;
      for (int i = 0; i < 40; ++i) {
        x.push_back(i * 0.1);
        y.push_back(3 + 2 * x.back() + noise(random) + (wild && i % 13 == 5 ? 50 : 0));
      }
      const auto fit = robust_fit(line_through(x, y), Eigen::Vector2d(0, 0));
      ASSERT_TRUE(fit);
      holds += fit->low_95[1] <= 2 && 2 <= fit->high_95[1] ? 1 : 0;
      EXPECT_GE(fit->rejected, wild ? 3u : 0u);
    }
    EXPECT_NEAR(holds / 400.0, 0.95, 0.04) << (wild ? "wild" : "clean");
  }
}

TEST(RobustFit, SaysWhenParametersCanNotBeSeparated) {
  const std::vector<double> x(10, 1.0);
  const std::vector<double> y = {1, 2, 1, 2, 1, 2, 1, 2, 1, 2};
  EXPECT_FALSE(robust_fit(line_through(x, y), Eigen::Vector2d(0, 0)));
}

class LearnFromRecords : public ::testing::Test {
 protected:
  void SetUp() override {
    plan_ = small_plan();
    plan_.wires[0].alpha_mm_s_A = 0.30;
    plan_.wires[0].beta_per_s_A2 = 5e-5;
    Cell cell;
    Robot robot;
    robot.id = "R1";
    robot.crater_fill_s = 0.5;
    cell.robots = {robot};
    plan_.cell = cell;
  }

  /// A pass of a wire that melts by these factors, its current off by `share`.
  PassRecord record(double feed_m_min, double alpha_factor, double beta_factor, double share) const {
    PassRecord record;
    record.schedule = "F";
    record.robot = "R1";
    record.energy_method = "B";
    const double current =
        melting_current_A(feed_m_min * 1000 / 60, 18.0, 0.30 * alpha_factor, 5e-5 * beta_factor);
    record.steady.time_s = 40;
    record.steady.current_A = current * (1 + share);
    record.steady.voltage_V = 25;
    record.steady.power_W = *record.steady.current_A * 25 * 1.1;
    record.steady.wire_feed_speed_m_min = feed_m_min;
    record.end_stand_s = 0.8;
    return record;
  }

  const LearnedParameter* find(const Learned& learned, const std::string& name) const {
    for (const auto& parameter : learned.parameters)
      if (parameter.name == name) return &parameter;
    return nullptr;
  }

  Plan plan_;
};

TEST_F(LearnFromRecords, BothMeltingCoefficientsWhereCurrentsDiffer) {
  std::mt19937 random(2);
  std::normal_distribution<double> noise(0, 0.01);
  std::vector<PassRecord> records;
  for (int i = 0; i < 60; ++i) records.push_back(record(4 + i * 0.15, 1.08, 0.9, noise(random)));
  records.push_back(record(8, 3, 3, 0));  // a record of another wire
  const Learned learned = learn(records, plan_);
  const auto* alpha = find(learned, "wires/wire/alpha_mm_s_A");
  const auto* beta = find(learned, "wires/wire/beta_per_s_A2");
  ASSERT_TRUE(alpha && beta);
  EXPECT_LT(alpha->low_95, 0.30 * 1.08);
  EXPECT_GT(alpha->high_95, 0.30 * 1.08);
  EXPECT_LT(beta->low_95, 5e-5 * 0.9);
  EXPECT_GT(beta->high_95, 5e-5 * 0.9);
  EXPECT_TRUE(alpha->proposed);
  EXPECT_EQ(alpha->outliers, 1u);
  EXPECT_EQ(alpha->records, 61u);
  EXPECT_LE(alpha->leave_one_out_low, alpha->new_value);
  EXPECT_GE(alpha->leave_one_out_high, alpha->new_value);
  EXPECT_NEAR(alpha->prediction_sd_pct, 1, 0.4);
  EXPECT_EQ(learned.proposal.wires[0].alpha_mm_s_A, alpha->new_value);
  EXPECT_EQ(plan_.wires[0].alpha_mm_s_A, 0.30) << "the plan stays as it is";
  // Currents scatter by 1 % (standard): 95 % of them are within 2.0 %.
  ASSERT_TRUE(learned.proposal.wires[0].U_melting_pct);
  EXPECT_NEAR(*learned.proposal.wires[0].U_melting_pct, 2.0, 0.6);
  EXPECT_TRUE(std::any_of(learned.findings.begin(), learned.findings.end(), [](const Finding& finding) {
    return finding.rule == "learn.melting.half-width" && finding.where == "wires/wire";
  }));
  EXPECT_FALSE(plan_.wires[0].U_melting_pct);
}

TEST_F(LearnFromRecords, OneFactorWhereCurrentsAreAlike) {
  std::mt19937 random(2);
  std::normal_distribution<double> noise(0, 0.01);
  std::vector<PassRecord> records;
  for (int i = 0; i < 20; ++i) records.push_back(record(8, 1.03, 1.03, noise(random)));
  const Learned learned = learn(records, plan_);
  const auto* alpha = find(learned, "wires/wire/alpha_mm_s_A");
  ASSERT_TRUE(alpha);
  EXPECT_LT(alpha->low_95, 0.30 * 1.03);
  EXPECT_GT(alpha->high_95, 0.30 * 1.03);
  ASSERT_FALSE(learned.findings.empty());
  EXPECT_EQ(learned.findings[0].rule, "learn.melting.factor");
}

TEST_F(LearnFromRecords, WaveformFactorAndCraterTime) {
  std::vector<PassRecord> records;
  for (int i = 0; i < 10; ++i) {
    records.push_back(record(8, 1, 1, 0.001 * i));
    *records.back().end_stand_s += 0.001 * i;
  }
  const Learned learned = learn(records, plan_);
  const auto* factor = find(learned, "schedules/F/waveform_factor");
  ASSERT_TRUE(factor);
  EXPECT_NEAR(factor->new_value, 1.1, 1e-9);
  EXPECT_TRUE(factor->proposed);
  const Schedule& refitted = *find_by_id(learned.proposal.schedules, "F");
  ASSERT_TRUE(refitted.U_waveform_factor_pct);
  EXPECT_GE(*refitted.U_waveform_factor_pct, factor->prediction_sd_pct);
  EXPECT_LT(*refitted.U_waveform_factor_pct, 5);
  const auto* crater = find(learned, "cell/robots/R1/crater_fill_s");
  ASSERT_TRUE(crater);
  EXPECT_NEAR(crater->new_value, 0.8045, 0.002);
  EXPECT_NEAR(learned.proposal.cell->robots[0].crater_fill_s, crater->new_value, 1e-12);
  for (auto& each : records) each.energy_method = "A";
  EXPECT_FALSE(find(learn(records, plan_), "schedules/F/waveform_factor")) << "averaged signals can't tell";
}

TEST_F(LearnFromRecords, FewRecordsChangeNothingAndAreNoted) {
  const Learned learned = learn({record(8, 2, 2, 0), record(9, 2, 2, 0)}, plan_);
  EXPECT_TRUE(learned.parameters.empty());
  EXPECT_FALSE(learned.findings.empty());
  EXPECT_EQ(learned.proposal.wires[0].alpha_mm_s_A, 0.30);
  EXPECT_FALSE(learned.proposal.wires[0].U_melting_pct);
  EXPECT_TRUE(learn({}, plan_).findings.empty());
}

/// A weld of 40 s at 8 m/min, by a wire of 1.2 mm and 7.85 g/cm3: pi/4*1.44*8000*40/60*7.85/1000 g.
constexpr double fed_in_40_s_g = 47.3501;

class LearnFromScales : public LearnFromRecords {
 protected:
  void SetUp() override {
    LearnFromRecords::SetUp();
    plan_.wires[0].diameter_mm = 1.2;
    plan_.wires[0].density_g_cm3 = 7.85;
    plan_.wires[0].deposition_efficiency = 0.98;
    for (int i = 0; i < 12; ++i) {
      records_.push_back(record(8, 1, 1, 0));
      PassRecord& last = records_.back();
      last.unit_serial = "U" + std::to_string(i);
      last.seam = "S1";
      last.pass = 1;
      last.wire_feed_speed_m_min = 8;
      last.arc_time_s = 40;
    }
  }
  std::vector<Weighing> weighed(double share) const {
    std::vector<Weighing> weighings;
    for (int i = 0; i < 12; ++i)
      weighings.push_back({"U" + std::to_string(i), "", "S1", std::nullopt,
                           fed_in_40_s_g * share * (1 + 0.002 * (i % 3 - 1)), 2});
    return weighings;
  }
  const LearnedParameter* efficiency(const Learned& learned) const {
    return find(learned, "wires/wire/deposition_efficiency");
  }
  std::vector<PassRecord> records_;
};

TEST_F(LearnFromScales, HowMuchOfTheWireStaysInTheWeld) {
  const Learned learned = learn(records_, plan_, weighed(0.93));
  const auto* found = efficiency(learned);
  ASSERT_TRUE(found);
  EXPECT_NEAR(found->new_value, 0.93, 1e-3);
  EXPECT_LT(found->low_95, 0.93);
  EXPECT_GT(found->high_95, 0.93);
  EXPECT_EQ(found->records, 12u);
  EXPECT_TRUE(found->proposed);
  EXPECT_EQ(learned.proposal.wires[0].deposition_efficiency, found->new_value);
  EXPECT_FALSE(efficiency(learn(records_, plan_, weighed(0.981)))->proposed) << "the plan says 0.98";
}

TEST_F(LearnFromScales, TheScalesMayHoldAllPassesOfASeam) {
  std::vector<PassRecord> two = records_;
  for (PassRecord second : records_) {
    second.pass = 2;
    second.arc_time_s = 20;
    two.push_back(second);
  }
  std::vector<Weighing> weighings = weighed(0.93);
  for (Weighing& weighing : weighings) weighing.gained_g *= 1.5;
  EXPECT_NEAR(efficiency(learn(two, plan_, weighings))->new_value, 0.93, 1e-3);
  for (Weighing& weighing : weighings) weighing.pass = 1;
  EXPECT_NEAR(efficiency(learn(two, plan_, weighings))->new_value, 0.93 * 1.5, 1e-3);
}

TEST_F(LearnFromScales, MoreThanTheWireIsNoEfficiency) {
  const Learned learned = learn(records_, plan_, weighed(1.04));
  EXPECT_FALSE(efficiency(learned)->proposed);
  EXPECT_EQ(learned.findings.back().rule, "learn.deposition.above-one");
  EXPECT_EQ(learned.proposal.wires[0].deposition_efficiency, 0.98);
}

TEST_F(LearnFromScales, AWeighingWithoutARecordCountsForNothingAndIsSaid) {
  std::vector<Weighing> weighings = weighed(0.93);
  weighings[0].seam = "S9";
  records_[1].wire_feed_speed_m_min.reset();
  const Learned learned = learn(records_, plan_, weighings);
  EXPECT_EQ(efficiency(learned)->records, 10u);
  const auto said = std::find_if(learned.findings.begin(), learned.findings.end(),
                                 [](const Finding& f) { return f.rule == "learn.weighing.unused"; });
  ASSERT_NE(said, learned.findings.end());
  EXPECT_EQ(said->value, 2.0);
}

TEST(Weighings, AreReadAndRefusedInOneLine) {
  const auto weighings =
      parse_weighings("unit_serial;seam;pass;gained_g\nT1;S1;;45,5\nT1;S2;2;30\n", "w.csv");
  ASSERT_EQ(weighings.size(), 2u);
  EXPECT_EQ(weighings[0].gained_g, 45.5);
  EXPECT_FALSE(weighings[0].pass);
  EXPECT_EQ(weighings[1].pass, 2);
  const auto refused = [](const std::string& rows) -> std::string {
    try {
      parse_weighings("unit_serial,seam,pass,gained_g\n" + rows, "w.csv");
    } catch (const InputError& error) {
      return error.what();
    }
    return "taken as good";
  };
  EXPECT_EQ(refused("T1,S1,,0\n"), "w.csv:2:8: found \"0\", expected grams above 0");
  EXPECT_EQ(refused("T1,S1,,nan\n"), "w.csv:2:8: found \"nan\", expected grams above 0");
  EXPECT_EQ(refused("T1,S1,0,9\n"), "w.csv:2:7: found \"0\", expected a whole number from 1");
  EXPECT_EQ(refused(",S1,,9\n"), "w.csv:2:1: found nothing in \"unit_serial\", expected a serial number");
  EXPECT_EQ(refused("T1,S1,,9\nT1,S1,,8\n"),
            "w.csv:3:4: found this weld a second time, expected each weld once");
}

TEST(Standing, IsRecognisedFromTheLoggedTravelSpeed) {
  std::string log = "time_s,unit_serial,weldment,seam,pass,current_A,voltage_V,travel_speed_mm_s\n";
  for (int i = 0; i <= 100; ++i)
    log += fixed(i / 10.0, 1) + ",U1,W,S1,1," + (i < 100 ? fixed(200 + i % 3, 1) : "0") + "," +
           fixed(25 + 0.1 * (i % 2), 1) + "," + (i < 4 || i >= 92 ? "0.00" : "8.00") + "\n";
  const auto record = audit_text(log).passes.at(0);
  EXPECT_NEAR(*record.start_stand_s, 0.4, 1e-12);
  EXPECT_NEAR(*record.end_stand_s, 0.8, 1e-12);
}

}  // namespace
}  // namespace seamtakt::test
