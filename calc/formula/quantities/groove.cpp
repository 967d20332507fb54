#include "formula/size/groove.hpp"

#include "base/sentences/name_list.hpp"
#include "formula/input_checks.hpp"
#include "formula/quantities/registry.hpp"

namespace seamtakt {
namespace {

constexpr OptionSpec options[] = {
    {"type", OptionKind::text, "", "form of the groove", nullptr,
     "square|single-v|double-v|single-bevel|double-bevel|single-u"},
    {"thickness", OptionKind::number, "mm", "plate thickness", nullptr, nullptr},
    {"angle", OptionKind::number, "deg", "included angle of a V; bevel or wall angle else", nullptr, nullptr},
    {"gap", OptionKind::number, "mm", "root gap", "0", nullptr},
    {"root-face", OptionKind::number, "mm", "height of the root face", "0", nullptr},
    {"root-radius", OptionKind::number, "mm", "root radius of a U", nullptr, nullptr},
    {"cap-height", OptionKind::number, "mm", "height of the cap on each welded face", "0", nullptr},
};

constexpr ResultSpec results[] = {
    {"area_mm2", "mm2", "area with cap"},
    {"groove_area_mm2", "mm2", "groove area"},
    {"cap_area_mm2", "mm2", "cap area"},
    {"top_width_mm", "mm", "top width"},
};

constexpr const FormulaNote* notes[] = {
    &groove_square_note,       &groove_single_v_note, &groove_double_v_note, &groove_single_bevel_note,
    &groove_double_bevel_note, &groove_single_u_note, &groove_width_note,    &groove_cap_note};

const FormulaNote& note_of(GrooveType type) {
  switch (type) {
    case GrooveType::square:
      return groove_square_note;
    case GrooveType::single_v:
      return groove_single_v_note;
    case GrooveType::double_v:
      return groove_double_v_note;
    case GrooveType::single_bevel:
      return groove_single_bevel_note;
    case GrooveType::double_bevel:
      return groove_double_bevel_note;
    case GrooveType::single_u:
      break;
  }
  return groove_single_u_note;
}

template <class Real>
GrooveShape<Real> given_shape(const Inputs<Real>& in) {
  if (!in.has("type"))
    throw InputError(
        "--type", "nothing"_word,
        one_of_names({"square", "single-v", "double-v", "single-bevel", "double-bevel", "single-u"}));
  GrooveShape<Real> shape;
  shape.type = *groove_type_of(in.text("type"));
  shape.thickness_mm = positive(in, "thickness");
  shape.gap_mm = not_negative(in, "gap");
  if (shape.type == GrooveType::square) return shape;
  shape.root_face_mm = not_negative(in, "root-face");
  if (value_of(shape.root_face_mm) > value_of(shape.thickness_mm))
    throw InputError("--root-face", number_text(value_of(shape.root_face_mm)), "at most the thickness"_word);
  shape.angle_deg = not_negative(in, "angle");
  double below = groove_angle_below_deg(shape.type);
  if (!(value_of(shape.angle_deg) < below))
    throw InputError("--angle", number_text(value_of(shape.angle_deg)),
                     Sentence("formula.angle-below"_key, {{"below", UnitValue{below, "deg"}}}));
  if (shape.type == GrooveType::single_u) shape.root_radius_mm = positive(in, "root-radius");
  return shape;
}

template <class Real>
void explain_shape(const GrooveShape<Real>& shape, const Real& area, Results<Real>& out) {
  // The U's note speaks of phi, the angle of its arc, in radians: 90 deg less the wall angle.
  Real phi = (90.0 - shape.angle_deg) * (std::numbers::pi / 180.0);
  using std::cos;
  Real straight = shape.thickness_mm - shape.root_face_mm - shape.root_radius_mm * (1.0 - cos(phi));
  out.explain(note_of(shape.type), area, "mm2",
              {{"g", "root gap", shape.gap_mm, "mm"},
               {"t", "thickness", shape.thickness_mm, "mm"},
               {"c", "root face", shape.root_face_mm, "mm"},
               {"alpha", "included angle", shape.angle_deg, "deg"},
               {"beta", "bevel angle", shape.angle_deg, "deg"},
               {"r", "root radius", shape.root_radius_mm, "mm"},
               {"phi", "angle of the arc", phi, "rad"},
               {"s", "height of the straight wall", straight, "mm"}});
}

struct GrooveQuantity {
  template <class Real>
  static void compute(const Inputs<Real>& in, Results<Real>& out) {
    GrooveShape<Real> shape = given_shape(in);
    Real cap_height = not_negative(in, "cap-height");
    Real groove = groove_area_mm2(shape), width = groove_top_width_mm(shape);
    Real cap = groove_cap_area_mm2(shape.type, width, cap_height);
    Real walls = width - shape.gap_mm;
    out.set("groove_area_mm2", groove);
    out.set("top_width_mm", width);
    out.set("cap_area_mm2", cap);
    out.set("area_mm2", Real(groove + cap));
    explain_shape(shape, groove, out);
    out.explain(groove_width_note, width, "mm",
                {{"g", "root gap", shape.gap_mm, "mm"}, {"w", "opening of the walls", walls, "mm"}});
    out.explain(groove_cap_note, cap, "mm2",
                {{"b", "top width", width, "mm"},
                 {"h", "cap height", cap_height, "mm"},
                 {"n", "faces welded", Real(welded_faces(shape.type)), ""}});
  }
};

}  // namespace

const Quantity groove_quantity{"groove",
                               "cross-section of a butt weld's groove",
                               options,
                               results,
                               notes,
                               &GrooveQuantity::compute<double>,
                               &GrooveQuantity::compute<Dual>};

}  // namespace seamtakt
