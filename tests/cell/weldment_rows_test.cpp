#include "cell/timeline/weldment_rows.hpp"

#include <gtest/gtest.h>

#include <string>

namespace seamtakt::test {
namespace {

/// Weldments A and B, two seams each, two passes a seam.
Evaluation rows() {
  Evaluation evaluation;
  for (const char* weldment : {"A", "B"})
    for (const char* seam : {"S1", "S2"}) {
      evaluation.seams.emplace_back();
      evaluation.seams.back().weldment = weldment;
      evaluation.seams.back().seam = seam;
      for (int pass = 1; pass <= 2; ++pass) {
        evaluation.passes.emplace_back();
        evaluation.passes.back().weldment = weldment;
        evaluation.passes.back().seam = seam;
        evaluation.passes.back().pass = pass;
      }
    }
  return evaluation;
}

TEST(WeldmentRows, AreFoundInOrderAndOutOfIt) {
  const Evaluation evaluation = rows();
  WeldmentRows of_b(evaluation, "B");
  ASSERT_EQ(of_b.passes().size(), 4u);
  EXPECT_EQ(of_b.pass("S1", 1), &evaluation.passes[4]);
  EXPECT_EQ(of_b.pass("S2", 2), &evaluation.passes[7]);
  EXPECT_EQ(of_b.pass("S1", 2), &evaluation.passes[5]) << "before the one found last";
  EXPECT_EQ(of_b.seam("S2"), &evaluation.seams[3]);
  EXPECT_EQ(of_b.seam("S1"), &evaluation.seams[2]);
}

TEST(WeldmentRows, ThatAreNotThereAreNull) {
  const Evaluation evaluation = rows();
  WeldmentRows of_a(evaluation, "A"), of_none(evaluation, "C");
  EXPECT_EQ(of_a.pass("S1", 3), nullptr);
  EXPECT_EQ(of_a.seam("S3"), nullptr);
  EXPECT_EQ(of_a.pass("S1", 1), &evaluation.passes[0]) << "asking in vain moves nothing";
  EXPECT_TRUE(of_none.passes().empty());
  EXPECT_EQ(of_none.pass("S1", 1), nullptr);
}

TEST(WeldmentRows, OfAllWeldmentsComeOneAfterTheOther) {
  const Evaluation evaluation = rows();
  RowsByWeldment all(evaluation);
  EXPECT_EQ(all.next("A").passes().data(), &evaluation.passes[0]);
  EXPECT_TRUE(all.next("without seams").passes().empty());
  WeldmentRows of_b = all.next("B");
  EXPECT_EQ(of_b.passes().data(), &evaluation.passes[4]);
  EXPECT_EQ(of_b.seam("S1"), &evaluation.seams[2]);
}

}  // namespace
}  // namespace seamtakt::test
