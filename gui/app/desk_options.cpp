#include "app/desk_options.hpp"

#include <QRegularExpression>

#include "base/error.hpp"
#include "exchange/report/caution.hpp"

namespace seamtakt::desk {

namespace {

std::string in_quotes(const QString& text) {
  return "\"" + printable(text.toStdString()) + "\"";
}

QSize size_of(const QString& text) {
  static const QRegularExpression form(QStringLiteral("^(\\d{3,5})x(\\d{3,5})$"));
  const auto match = form.match(text);
  if (!match.hasMatch()) throw InputError("--size", in_quotes(text), "a size such as 1280x800");
  return {match.captured(1).toInt(), match.captured(2).toInt()};
}

QString one_of(const char* option, const QString& text, const QStringList& choices) {
  if (!choices.contains(text))
    throw InputError(option, in_quotes(text), choices.join(QStringLiteral(" or ")).toStdString());
  return text;
}

void check(const DeskOptions& options) {
  if (!options.export_to.isEmpty() && !options.pictures_to.isEmpty())
    throw InputError("--export", "--pictures as well", "one of the two");
  if (!options.export_to.isEmpty() && !options.export_to.endsWith(QStringLiteral(".pdf")))
    throw InputError("--export", in_quotes(options.export_to), "a file name that ends in .pdf");
  if (options.store.isEmpty() != options.unit.isEmpty())
    throw InputError(options.store.isEmpty() ? "--unit" : "--store", "it alone",
                     "--store URI and --unit SERIAL together");
  if (!options.store.isEmpty() && options.export_to.isEmpty())
    throw InputError("--store", "nothing to write", "--export FILE.pdf beside it");
  if (!options.store.isEmpty() && !options.plan.isEmpty())
    throw InputError("PLAN", "a plan and a store", "one of the two");
  if (!options.schedules.isEmpty() && (options.export_to.isEmpty() || options.plan.isEmpty()))
    throw InputError("--schedule", "no plan to export from", "--export FILE.pdf and a plan beside it");
  const bool without_display = !options.export_to.isEmpty() || !options.pictures_to.isEmpty();
  if (without_display && options.plan.isEmpty() && options.store.isEmpty())
    throw InputError("PLAN", "nothing", "a plan file");
}

}  // namespace

DeskOptions read_options(const QStringList& arguments) {
  DeskOptions options;
  const auto value = [&](qsizetype& i) {
    if (i + 1 >= arguments.size())
      throw InputError(arguments[i].toStdString(), "nothing after it", "a value");
    return arguments[++i];
  };
  for (qsizetype i = 0; i < arguments.size(); ++i) {
    const QString& argument = arguments[i];
    if (argument == "--help" || argument == "-h")
      options.is_help = true;
    else if (argument == "--version")
      options.is_version = true;
    else if (argument == "--export")
      options.export_to = value(i);
    else if (argument == "--pictures")
      options.pictures_to = value(i);
    else if (argument == "--log")
      options.log = value(i);
    else if (argument == "--store")
      options.store = value(i);
    else if (argument == "--unit")
      options.unit = value(i);
    else if (argument == "--schedule")
      options.schedules = value(i).split(',', Qt::SkipEmptyParts);
    else if (argument == "--size")
      options.size = size_of(value(i));
    else if (argument == "--theme")
      options.theme = one_of("--theme", value(i), {"light", "dark"});
    else if (argument == "--language")
      options.language = one_of("--language", value(i), {"en", "de"});
    else if (argument == "--units")
      options.units = one_of("--units", value(i), {"si", "us"});
    else if (argument.startsWith('-') && argument.size() > 1)
      throw InputError("options", in_quotes(argument), "an option that --help names");
    else if (!options.plan.isEmpty())
      throw InputError("PLAN", in_quotes(argument) + " as a second plan", "one plan file");
    else
      options.plan = argument;
  }
  if (!options.is_help && !options.is_version) check(options);
  return options;
}

QString desk_usage() {
  return QStringLiteral(
             "seamtakt-desk [PLAN] [--log FILE]\n"
             "seamtakt-desk --export FILE.pdf (PLAN [--schedule IDS] | --store URI --unit SERIAL)\n"
             "seamtakt-desk --pictures DIR PLAN [--log FILE]\n\n"
             "  PLAN                 plan file (NAME.weldplan.json)\n"
             "  --export FILE.pdf    writes the report, without a display\n"
             "  --schedule IDS       the sheets of these schedules alone, ids apart by commas\n"
             "  --pictures DIR       writes one PNG a page, without a display\n"
             "  --log FILE           arc log for the records page\n"
             "  --store URI          with --unit: the record store\n"
             "  --unit SERIAL        the unit that the report is about\n"
             "  --size 1280x800      size of the window or pictures\n"
             "  --theme light|dark   colours (the system's)\n"
             "  --language en|de     language (the system's)\n"
             "  --units si|us        units shown; files stay SI\n"
             "  --version, --help\n\n%1\n")
      .arg(QString::fromUtf8(caution_text()));
}

}  // namespace seamtakt::desk
