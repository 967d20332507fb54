#include "plan/fields/json_layout.hpp"
#include "plan/fields/object_fields.hpp"
#include "plan/fields/plan_file.hpp"

namespace seamtakt {

std::string write_plan(const Plan& plan) {
  std::string json;
  write_object(plan, json);
  return layout_json(json);
}

}  // namespace seamtakt
