#pragma once
// The command line: one small file for each subcommand, all of them readable without a display.

#include <QCommandLineOption>
#include <QCommandLineParser>
#include <QList>
#include <QStringList>

#include <iosfwd>
#include <vector>

namespace sump {

/// What every subcommand's exit status means.
enum ExitStatus {
  kClean = 0,    ///< done, and no finding of error severity
  kFindings = 1, ///< done, and the plan has findings of error severity
  kBadInput = 2, ///< nothing done: the arguments, the plan or a place to write are unusable
};

struct Streams {
  std::ostream& out;
  std::ostream& err;
};

struct Command {
  const char* name;
  const char* summary;   ///< one line for the list
  const char* arguments; ///< after the name: `PLAN [options]`
  const char* examples;  ///< lines for the end of its help
  QList<QCommandLineOption> (*options)();
  int (*run)(const QCommandLineParser& parsed, Streams streams);
  const char* status = nullptr; ///< what its exit status means, where that is not ExitStatus
};

Command checkCommand();
Command levelsCommand();
Command takeoffCommand();
Command stakeoutCommand();
Command calculateCommand();
Command upkeepCommand();
Command exportCommand();
Command compareCommand();

const std::vector<Command>& commands();
const Command* commandByName(const QString& name);

/// Runs `arguments` (without the program's name): a subcommand, `help [NAME]`, `--help` or
/// `--version`. Errors become one line on `streams.err`; never throws.
int runCommand(const QStringList& arguments, Streams streams);
/// True when they write pages, which takes fonts and so a QGuiApplication.
bool writesPages(const QStringList& arguments);
/// True when `word`, as the first argument, is for runCommand and not a file for the window.
bool isCommandWord(const QString& word);

} // namespace sump
