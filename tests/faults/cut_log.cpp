#include "cut_log.hpp"

#include <algorithm>
#include <cstring>
#include <random>
#include <stdexcept>

#include "base/json/json_node.hpp"

namespace seamtakt {

namespace {

constexpr std::uint64_t sector_size = 512, block_size = 4096;
constexpr const char* halves[] = {"none", "all", "a half", "a torn half"};
enum Kept : unsigned { none, all, half, torn_half };

class CutDisk {
 public:
  explicit CutDisk(std::string image) : flushed_(std::move(image)) {}

  void take(const CutEvent& event) {
    if (event.kind == 'a') acknowledged_ += event.bytes;
    if (event.kind == 'w') later_.push_back(&event);
    if (event.kind != 'f') return;
    for (const CutEvent* write : later_) put(flushed_, *write, 0, write->bytes.size());
    later_.clear();
  }

  CutState cut(Kept kept, std::mt19937& random) const {
    CutState state{flushed_, acknowledged_, {}};
    const auto coin = [&] { return kept == all || (kept != none && random() % 2 == 0); };
    for (const CutEvent* write : later_) {
      if (kept == torn_half)
        put_torn(state.image, *write, coin);
      else if (coin())
        put(state.image, *write, 0, write->bytes.size());
    }
    state.what = std::string(halves[kept]) + " of " + std::to_string(later_.size()) + " unflushed writes";
    return state;
  }

 private:
  static void put(std::string& image, const CutEvent& write, std::uint64_t from, std::uint64_t size) {
    image.replace(write.offset + from, size, write.bytes, from, size);
  }

  template <typename Coin>
  static void put_torn(std::string& image, const CutEvent& write, const Coin& coin) {
    for (std::uint64_t from = 0; from < write.bytes.size();) {
      const std::uint64_t at = write.offset + from;
      const std::uint64_t piece = at < block_size ? block_size - at : sector_size;
      const std::uint64_t size = std::min<std::uint64_t>(piece, write.bytes.size() - from);
      if (coin()) put(image, write, from, size);
      from += size;
    }
  }

  std::string flushed_, acknowledged_;
  std::vector<const CutEvent*> later_;
};

}  // namespace

std::vector<CutEvent> read_cut_log(const std::string& path) {
  const std::string log = read_file(path, std::size_t{1} << 32);
  std::vector<CutEvent> events;
  for (std::size_t at = 0; at < log.size();) {
    CutEventHead head;
    if (log.size() - at < sizeof head) throw std::runtime_error("the disk's log is cut short");
    std::memcpy(&head, log.data() + at, sizeof head);
    at += sizeof head;
    if (log.size() - at < head.size) throw std::runtime_error("the disk's log is cut short");
    events.push_back({head.kind, head.offset, log.substr(at, head.size)});
    at += head.size;
  }
  return events;
}

void each_cut_state(std::string image, const std::vector<CutEvent>& events, int count, unsigned seed,
                    const std::function<void(const CutState&)>& visit) {
  std::mt19937 random(seed);
  std::vector<std::size_t> places;
  while (places.size() < static_cast<std::size_t>(count)) {
    const std::size_t place = random() % (events.size() + 1);
    // Right after a flush the disk has a state that is also possible right before it.
    if (place == 0 || events[place - 1].kind != 'f') places.push_back(place);
  }
  std::sort(places.begin(), places.end());
  CutDisk disk(std::move(image));
  std::size_t done = 0;
  for (const std::size_t place : places) {
    while (done < place) disk.take(events[done++]);
    CutState state = disk.cut(static_cast<Kept>(random() % 4), random);
    state.what =
        "after event " + std::to_string(place) + " of " + std::to_string(events.size()) + ", " + state.what;
    visit(state);
  }
}

}  // namespace seamtakt
