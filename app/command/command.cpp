#include "app/command/command.h"

#include "core/catalog/catalog.h"
#include "core/exchange/input_error.h"

#include <algorithm>
#include <ostream>
#include <stdexcept>

namespace sump {

namespace {

constexpr const char* kStatusHelp =
    "Exit status: 0 no finding of error severity, 1 findings of error severity, 2 bad input.\n";

void listCommands(std::ostream& out) {
  out << "Usage: sumpwright [PLAN...]            open the window\n"
         "       sumpwright COMMAND PLAN [...]   work without a display\n\nCommands:\n";
  for (const Command& command : commands()) {
    const std::string name = command.name;
    out << "  " << name << std::string(10 - name.size(), ' ') << command.summary << "\n";
  }
  out << "\n'sumpwright COMMAND --help' explains a command and gives examples.\n" << kStatusHelp;
}

QList<QCommandLineOption> allOptions(const Command& command) {
  return command.options() << QCommandLineOption(QStringList{"h", "help"}, "Explain this command.");
}

std::string optionNames(const QCommandLineOption& option) {
  QString text;
  for (const QString& name : option.names()) {
    text += (text.isEmpty() ? "" : ", ") + QString(name.size() == 1 ? "-" : "--") + name;
  }
  if (!option.valueName().isEmpty()) text += " " + option.valueName();
  return text.leftJustified(20).toStdString();
}

void explain(const Command& command, std::ostream& out) {
  out << "Usage: sumpwright " << command.name << " " << command.arguments << "\n\n"
      << command.summary << "\n\nOptions:\n";
  for (const QCommandLineOption& option : allOptions(command)) {
    out << "  " << optionNames(option) << " " << option.description().toStdString() << "\n";
  }
  out << "\n"
      << (command.status != nullptr ? command.status : kStatusHelp) << "\nExamples:\n"
      << command.examples;
}

int runParsed(const Command& command, const QStringList& arguments, Streams streams) {
  QCommandLineParser parser;
  parser.addOptions(allOptions(command));
  if (!parser.parse(QStringList{"sumpwright"} + arguments)) {
    streams.err << "sumpwright " << command.name << ": " << parser.errorText().toStdString()
                << " See 'sumpwright " << command.name << " --help'.\n";
    return kBadInput;
  }
  if (parser.isSet("help")) {
    explain(command, streams.out);
    return kClean;
  }
  return command.run(parser, streams);
}

int help(const QStringList& words, Streams streams) {
  if (words.isEmpty()) {
    listCommands(streams.out);
    return kClean;
  }
  const Command* command = commandByName(words.first());
  if (command == nullptr) {
    streams.err << "sumpwright: there is no command '" << words.first().toStdString()
                << "'. 'sumpwright --help' lists them.\n";
    return kBadInput;
  }
  explain(*command, streams.out);
  return kClean;
}

int dispatch(const QStringList& arguments, Streams streams) {
  const QString first = arguments.value(0);
  if (first == "--version") {
    streams.out << "sumpwright " << SUMPWRIGHT_VERSION << "\n";
    return kClean;
  }
  if (first == "help" || first == "--help" || first == "-h") return help(arguments.mid(1), streams);
  if (const Command* command = commandByName(first)) {
    return runParsed(*command, arguments.mid(1), streams);
  }
  return help({first}, streams);
}

} // namespace

const std::vector<Command>& commands() {
  static const std::vector<Command> all = {checkCommand(),    levelsCommand(),    takeoffCommand(),
                                           stakeoutCommand(), calculateCommand(), upkeepCommand(),
                                           exportCommand(),   compareCommand()};
  return all;
}

const Command* commandByName(const QString& name) {
  for (const Command& command : commands()) {
    if (name == command.name) return &command;
  }
  return nullptr;
}

bool isCommandWord(const QString& word) {
  return word.startsWith('-') || word == "help" || commandByName(word) != nullptr;
}

bool writesPages(const QStringList& arguments) {
  return arguments.value(0) == "export" ||
         std::any_of(arguments.begin(), arguments.end(), [](const QString& word) {
           return word.startsWith("--pdf") || word.startsWith("--svg");
         });
}

int runCommand(const QStringList& arguments, Streams streams) {
  try {
    return dispatch(arguments, streams);
  } catch (const std::exception& error) {
    // InputError, CatalogError and invalid_argument each say what, where and how to mend it.
    streams.err << "sumpwright: " << error.what() << "\n";
  }
  return kBadInput;
}

} // namespace sump
