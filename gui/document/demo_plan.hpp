#pragma once

#include <QString>

namespace seamtakt::desk {

/// The demo plan: the one that was installed, or that of the source folder; empty where neither is there. Its
/// log, orders and manual seams are beside it.
QString demo_plan_path();
/// A file beside the demo plan, such as "orders.csv".
QString demo_file(const QString& name);

}  // namespace seamtakt::desk
