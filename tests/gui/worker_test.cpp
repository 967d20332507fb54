#include "jobs/worker.hpp"

#include <gtest/gtest.h>

#include <QSemaphore>
#include <QStringList>
#include <stdexcept>

namespace seamtakt::desk {
namespace {

class WorkerTest : public testing::Test {
 protected:
  Worker::Said saying(const QString& word) {
    return [this, word] { said_ << word; };
  }

  QStringList said_;
  QSemaphore gate_, begun_;
  Worker worker_{[this](const QString& reason) { said_ << "failed: " + reason; }, saying("stopped")};
};

TEST_F(WorkerTest, SaysItsWordsInOrderAndTheLastOneWhenItIsFree) {
  worker_.queue([this](unsigned run) {
    worker_.say(run, saying("half"));
    return [this] { said_ << (worker_.isBusy() ? "busy" : "free"); };
  });
  EXPECT_TRUE(worker_.isBusy());
  worker_.wait();
  EXPECT_EQ(said_, QStringList({"half", "free"}));
}

TEST_F(WorkerTest, LosesTheWordsOfAPieceThatWasOvertaken) {
  worker_.queue([this](unsigned run) {
    begun_.release();
    gate_.acquire();
    worker_.say(run, saying("old half"));
    return saying("old");
  });
  begun_.acquire();
  worker_.queue([this](unsigned) { return saying("never begun"); });
  worker_.queue([this](unsigned) { return saying("new"); });
  gate_.release();
  worker_.wait();
  EXPECT_EQ(said_, QStringList({"new"}));
}

TEST_F(WorkerTest, StartAsksThePieceBeforeToStopAndNotItsOwn) {
  worker_.queue([this](unsigned) -> Worker::Said {
    begun_.release();
    while (!worker_.isStopped()) gate_.tryAcquire(1, 1);
    throw Worker::Stopped();
  });
  begun_.acquire();
  worker_.start([this](unsigned) { return saying(worker_.isStopped() ? "told to stop" : "new"); });
  worker_.wait();
  EXPECT_EQ(said_, QStringList({"new"}));
}

TEST_F(WorkerTest, AStopReachesAPieceThatWaitsForItsTurn) {
  worker_.queue([this](unsigned) {
    begun_.release();
    gate_.acquire();
    return saying("old");
  });
  begun_.acquire();
  worker_.queue([this](unsigned) -> Worker::Said {
    if (worker_.isStopped()) throw Worker::Stopped();
    return saying("new");
  });
  worker_.stop();
  gate_.release();
  worker_.wait();
  EXPECT_EQ(said_, QStringList({"stopped"}));
}

TEST_F(WorkerTest, TellsWhyItFailedAndGoesOnAfterwards) {
  worker_.queue([](unsigned) -> Worker::Said { throw std::runtime_error("no such file"); });
  worker_.wait();
  worker_.queue([this](unsigned) { return saying("next"); });
  worker_.wait();
  EXPECT_EQ(said_, QStringList({"failed: no such file", "next"}));
}

TEST_F(WorkerTest, NothingFollowsADroppedPieceAndTheNextOneRuns) {
  worker_.queue([this](unsigned run) {
    begun_.release();
    gate_.acquire();
    worker_.say(run, saying("half"));
    return saying("dropped");
  });
  begun_.acquire();
  worker_.drop();
  EXPECT_FALSE(worker_.isBusy());
  gate_.release();
  worker_.queue([this](unsigned) { return saying("next"); });
  worker_.wait();
  EXPECT_EQ(said_, QStringList({"next"}));
}

}  // namespace
}  // namespace seamtakt::desk
