#include "plain_audit.hpp"

#include <cstdlib>
#include <map>

namespace seamtakt::test {

namespace {

using Cells = std::vector<std::string>;

/// Rows of fields, read one character at a time.
std::vector<Cells> cells_of(const std::string& text, char delimiter) {
  std::vector<Cells> rows;
  Cells row;
  std::string cell;
  bool quoted = false, any = false;
  const auto end_row = [&] {
    if (any || !cell.empty() || !row.empty()) {
      row.push_back(cell);
      rows.push_back(row);
    }
    row.clear(), cell.clear();
    any = false;
  };
  for (std::size_t i = 0; i < text.size(); ++i) {
    const char c = text[i];
    if (quoted) {
      if (c != '"')
        cell += c;
      else if (i + 1 < text.size() && text[i + 1] == '"')
        cell += text[++i];
      else
        quoted = false;
    } else if (c == '"') {
      quoted = any = true;
    } else if (c == delimiter) {
      row.push_back(cell);
      cell.clear();
      any = true;
    } else if (c == '\n') {
      end_row();
    } else if (c != '\r') {
      cell += c;
    }
  }
  end_row();
  return rows;
}

long double number(std::string text) {
  for (char& c : text)
    if (c == ',') c = '.';
  return std::strtold(text.c_str(), nullptr);
}

struct LongSample {
  long double t, i, u, v;
};

/// Samples whose current and voltage repeat for more than 2 s: which of them.
std::vector<bool> frozen_samples(const std::vector<LongSample>& samples) {
  std::vector<bool> frozen(samples.size(), false);
  for (std::size_t first = 0; first < samples.size();) {
    std::size_t last = first;
    while (last + 1 < samples.size() && samples[last + 1].i == samples[first].i &&
           samples[last + 1].u == samples[first].u)
      ++last;
    if (samples[first].i > 5 && samples[last].t - samples[first].t > 2.0L)
      for (std::size_t k = first; k <= last; ++k) frozen[k] = true;
    first = last + 1;
  }
  return frozen;
}

void add_up(const std::vector<LongSample>& samples, PlainPass& pass) {
  const std::vector<bool> frozen = frozen_samples(samples);
  pass.samples = samples.size();
  pass.first_s = samples.front().t;
  pass.last_s = samples.back().t;
  for (std::size_t k = 0; k < samples.size(); ++k) {
    const bool on = samples[k].i > 5;
    if (on && (k == 0 || !(samples[k - 1].i > 5))) ++pass.arc_starts;
    if (!on || k + 1 == samples.size()) continue;
    const LongSample &a = samples[k], &b = samples[k + 1];
    const long double dt = b.t - a.t;
    if (frozen[k]) {
      pass.frozen_s += dt;
      continue;
    }
    pass.arc_time_s += dt;
    pass.current += a.i * dt;
    pass.voltage += a.u * dt;
    pass.power += a.u * a.i * dt;
    pass.energy_J += (a.u * a.i + b.u * b.i) / 2 * dt;
    pass.travelled_mm += (b.i > 5 ? (a.v + b.v) / 2 : a.v) * dt;
  }
  if (pass.arc_time_s > 0) {
    pass.current /= pass.arc_time_s;
    pass.voltage /= pass.arc_time_s;
    pass.power /= pass.arc_time_s;
  }
}

}  // namespace

std::vector<PlainPass> plain_audit(const std::string& text) {
  const std::string header = text.substr(0, text.find('\n'));
  const char delimiter = header.find(';') != std::string::npos    ? ';'
                         : header.find('\t') != std::string::npos ? '\t'
                                                                  : ',';
  auto rows = cells_of(text.substr(text.compare(0, 3, "\xef\xbb\xbf") == 0 ? 3 : 0), delimiter);
  std::map<std::string, std::size_t> column;
  for (std::size_t i = 0; i < rows[0].size(); ++i) column[rows[0][i]] = i;
  std::vector<PlainPass> passes;
  std::vector<std::vector<LongSample>> samples;
  for (std::size_t r = 1; r < rows.size(); ++r) {
    const auto cell = [&](const char* name) { return rows[r][column.at(name)]; };
    std::size_t which = 0;
    while (which < passes.size() &&
           !(passes[which].unit == cell("unit_serial") && passes[which].weldment == cell("weldment") &&
             passes[which].seam == cell("seam") && passes[which].pass == cell("pass")))
      ++which;
    if (which == passes.size()) {
      passes.push_back({cell("unit_serial"), cell("weldment"), cell("seam"), cell("pass")});
      samples.emplace_back();
    }
    samples[which].push_back({number(cell("time_s")), number(cell("current_A")), number(cell("voltage_V")),
                              number(cell("travel_speed_mm_s"))});
  }
  for (std::size_t i = 0; i < passes.size(); ++i) add_up(samples[i], passes[i]);
  std::erase_if(passes, [](const PlainPass& pass) { return pass.arc_starts == 0; });
  return passes;
}

}  // namespace seamtakt::test
