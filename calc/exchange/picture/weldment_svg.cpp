#include "exchange/picture/weldment_svg.hpp"

#include <algorithm>
#include <cmath>

#include "base/text/utf8.hpp"
#include "base/units/units.hpp"
#include "exchange/picture/leader_labels.hpp"
#include "exchange/picture/weldment_scene.hpp"
#include "exchange/sheets/cell_text.hpp"
#include "exchange/sheets/html.hpp"

namespace seamtakt {

namespace {

constexpr double page_width = 1000, most_height = 560, page_margin = 34, page_foot = 30;
constexpr std::size_t most_labels = 12;
constexpr const char* paper_tones[] = {"#efece3", "#e3ded1", "#d3cdbe"};
constexpr const char *line_colour = "#5a626d", *label_colour = "#fffdf8", *ink_colour = "#23272e";

const char* colour_of(std::optional<Severity> severity) {
  if (!severity) return "#0b6e5a";
  switch (*severity) {
    case Severity::note:
      return "#1f5f99";
    case Severity::warn:
      return "#8a5a00";
    case Severity::fail:
      return "#b23a00";
  }
  return line_colour;
}

const char* word_of(std::optional<Severity> severity) {
  return severity ? to_string(*severity) : "ok";
}

std::string coordinate(double value) {
  return rounded_text(std::round(value * 100) / 100, 7);
}

std::string svg_attribute(const char* name, double value) {
  return std::string(" ") + name + "=\"" + coordinate(value) + "\"";
}

/// Tells where a polyline's next point is put.
struct PageFit {
  ViewFit fit;
  std::string at(const ViewPoint& point) const {
    return coordinate(fit.x + fit.scale * point.x) + " " + coordinate(fit.y - fit.scale * point.y);
  }
};

class WeldmentDrawing {
 public:
  WeldmentDrawing(const Weldment& weldment, const std::vector<SeamMark>& marks, const TextView& view)
      : weldment_(weldment), marks_(marks), view_(view), scene_(weldment) {}

  std::string svg() {
    if (scene_.is_empty()) return {};
    frame_.look(scene_, first_view);
    const double width = page_width - 2 * page_margin;
    // As high as the picture is at the page's width.
    const double wide_scale = frame_.box().fit({0, 0, width, 1e9}).scale;
    height_ = std::clamp(frame_.box().height_mm() * wide_scale + 2 * page_margin, 160.0, most_height);
    page_.fit = frame_.box().fit({page_margin, page_margin, width, height_ - 2 * page_margin});
    out_ = "<svg role=\"img\" aria-label=\"" +
           html_text(cell_text(PatternCell{"Picture of {1}"_word, {weldment_.id}}, view_)) +
           "\" viewBox=\"0 0 " + coordinate(page_width) + " " + coordinate(height_ + page_foot) + "\">\n";
    faces();
    beads(Sight::hidden, 0.9, 0.7);
    beads(Sight::veiled, 3.2, 0.65);
    beads(Sight::clear, 3.2, 1);
    labels();
    legend();
    return out_ + "</svg>\n";
  }

 private:
  void faces() {
    const SolidFaces& faces = scene_.faces();
    const Point_mm& to_viewer = frame_.view().to_viewer;
    for (const std::uint32_t index : frame_.order()) {
      const FacePart& part = scene_.tree().parts()[index];
      const SolidFace& face = faces.faces[part.face];
      const auto corners = scene_.tree().corners_of(part);
      const auto sides = scene_.tree().sides_of(part);
      std::string points, lines;
      for (std::size_t i = 0; i < corners.size(); ++i) {
        const std::string at = page_.at(frame_.view().at(corners[i]));
        points += (i ? " " : "") + at;
        if (is_side_drawn(faces, sides[i], to_viewer))
          lines += "M" + at + "L" + page_.at(frame_.view().at(corners[(i + 1) % corners.size()]));
      }
      const std::string tone = paper_tones[tone_of(face.normal)];
      // A hairline of the same tone closes the gaps that smoothing leaves between parts of one face.
      out_ += "<polygon points=\"" + points + "\" fill=\"" + tone + "\"" +
              (face.is_outer ? " fill-opacity=\"0.35\"" : " stroke=\"" + tone + "\" stroke-width=\"0.4\"") +
              "/>\n";
      if (!lines.empty())
        out_ += "<path fill=\"none\" stroke=\"" + std::string(line_colour) + "\" stroke-width=\"0.8\"" +
                (scene_.is_guess() ? " stroke-dasharray=\"5 3\"" : "") + " d=\"" + lines + "\"/>\n";
    }
  }

  void beads(Sight sight, double stroke_width, double opacity) {
    const std::vector<BeadPart>& beads = frame_.beads();
    for (std::size_t i = 0; i < beads.size();) {
      const std::uint32_t seam = beads[i].seam;
      std::string lines;
      for (; i < beads.size() && beads[i].seam == seam; ++i)
        if (beads[i].sight == sight) lines += "M" + page_.at(beads[i].a) + "L" + page_.at(beads[i].b);
      if (lines.empty()) continue;
      const SeamMark& mark = marks_[seam];
      const std::string name = weldment_.seams[seam].id + ": " + view_.word(word_of(mark.severity));
      out_ +=
          "<path fill=\"none\" stroke-linecap=\"butt\" stroke=\"" + std::string(colour_of(mark.severity)) +
          "\"" +
          svg_attribute("stroke-width", mark.severity == Severity::fail ? stroke_width * 1.5 : stroke_width) +
          svg_attribute("stroke-opacity", opacity) + " d=\"" + lines + "\"><title>" + html_text(name) +
          "</title></path>\n";
    }
  }

  std::string label_text(std::size_t seam) const {
    const std::string figures = mark_text(marks_[seam], view_);
    return figures.empty() ? weldment_.seams[seam].id : weldment_.seams[seam].id + " " + figures;
  }

  void labels() {
    std::vector<LeaderLabel> placed;
    std::vector<std::string> texts;
    for (std::size_t seam = 0; seam < scene_.seam_count() && placed.size() < most_labels; ++seam) {
      if (marks_[seam].severity != Severity::fail || weldment_.seams[seam].path_mm.size() < 2) continue;
      texts.push_back(label_text(seam));
      const ViewPoint at = frame_.anchor_of(seam);
      placed.push_back({page_.fit.x + page_.fit.scale * at.x, page_.fit.y - page_.fit.scale * at.y,
                        14 + 6.6 * static_cast<double>(display_width(texts.back())), 19, 0, 0});
    }
    place_labels(placed, {2, 2, page_width - 4, height_ - 4});
    for (std::size_t i = 0; i < placed.size(); ++i) label(placed[i], texts[i]);
  }

  void label(const LeaderLabel& label, const std::string& text) {
    const double to_x = std::clamp(label.anchor_x, label.x, label.x + label.width);
    const double to_y = std::clamp(label.anchor_y, label.y, label.y + label.height);
    out_ += "<line stroke=\"" + std::string(ink_colour) + "\" stroke-width=\"0.7\"" +
            svg_attribute("x1", label.anchor_x) + svg_attribute("y1", label.anchor_y) +
            svg_attribute("x2", to_x) + svg_attribute("y2", to_y) + "/>\n";
    out_ += "<rect fill=\"" + std::string(label_colour) + "\" stroke=\"" + colour_of(Severity::fail) +
            "\" stroke-width=\"0.8\"" + svg_attribute("x", label.x) + svg_attribute("y", label.y) +
            svg_attribute("width", label.width) + svg_attribute("height", label.height) + "/>\n";
    // The label's ground is light in every theme of the page, so its text is dark.
    out_ += "<text style=\"fill:" + std::string(ink_colour) + "\"" + svg_attribute("x", label.x + 7) +
            svg_attribute("y", label.y + 13.5) + ">" + html_text(text) + "</text>\n";
  }

  void legend() {
    double x = page_margin;
    const double y = height_ + 14;
    for (const auto severity : {std::optional<Severity>(), std::optional(Severity::note),
                                std::optional(Severity::warn), std::optional(Severity::fail)}) {
      const std::string word = view_.word(word_of(severity));
      out_ += "<line stroke=\"" + std::string(colour_of(severity)) + "\" stroke-width=\"" +
              (severity == Severity::fail ? "4.8" : "3.2") + "\"" + svg_attribute("x1", x) +
              svg_attribute("y1", y - 4) + svg_attribute("x2", x + 26) + svg_attribute("y2", y - 4) + "/>\n";
      text_at(x + 32, y, word);
      x += 58 + 6.6 * static_cast<double>(display_width(word));
    }
    if (scene_.is_guess()) text_at(x + 10, y, view_.word("Plates are guessed from the seams."_word));
  }

  void text_at(double x, double y, const std::string& text) {
    out_ += "<text" + svg_attribute("x", x) + svg_attribute("y", y) + ">" + html_text(text) + "</text>\n";
  }

  const Weldment& weldment_;
  const std::vector<SeamMark>& marks_;
  const TextView& view_;
  WeldmentScene scene_;
  WeldmentFrame frame_;
  PageFit page_;
  double height_ = 0;
  std::string out_;
};

}  // namespace

std::string weldment_svg(const Weldment& weldment, const std::vector<SeamMark>& marks, const TextView& view) {
  return WeldmentDrawing(weldment, marks, view).svg();
}

}  // namespace seamtakt
