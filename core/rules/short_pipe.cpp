// Pipe between two fittings: each socket takes its depth of it, whatever the cutting list says.

#include "core/rules/families.h"
#include "core/rules/report.h"
#include "core/study/cutting.h"

#include <algorithm>

namespace sump {

namespace {

/// Cuts are to the nearest sixteenth of an inch.
const Length kTapeHair = inches(1.0 / 32);

bool isSocket(const RunEnd& end) {
  return end.fitting != EndFitting::Plain || end.kind == EndKind::Run;
}

std::size_t legPieces(const RunStudy& study) {
  return static_cast<std::size_t>(std::ranges::count(study.pieces, true, &PipePiece::downLeg));
}

/// Of the piece with this number: what the sockets at its two ends take in. Nothing is known of
/// gasketed sockets, and conduit is joined in bells that are cut to suit.
Length socketDepths(const Supplies& supplies, const Run& run, const PipeProduct& pipe,
                    const RunStudy& study, std::size_t piece) {
  if (pipe.joining != Joining::SolventSocket) return {};
  const auto depth = supplies.socketDepthOf(study.pieces[piece].size);
  if (!depth) return {};
  if (study.pieces[piece].downLeg) return *depth; // its lower end is open
  const auto line = study.pieces.size() - legPieces(study);
  int sockets = 0;
  if (piece > 0 || isSocket(run.from)) ++sockets;
  if (piece + 1 < line || isSocket(run.to)) ++sockets;
  return static_cast<double>(sockets) * *depth;
}

/// The place so far along the line, in plan.
Point2 placeAt(const RunStudy& run, double station) {
  const auto next = std::ranges::find_if(
      run.points, [station](const RunPoint& point) { return point.station >= station; });
  if (next == run.points.begin()) return flat(run.points.front().at);
  if (next == run.points.end()) return flat(run.points.back().at);
  const RunPoint& before = *(next - 1);
  const double along = (station - before.station) / (next->station - before.station);
  return lerp(flat(before.at), flat(next->at), along);
}

Point2 legPlace(const RunStudy& study, std::size_t piece) {
  const auto leg = std::ranges::find(study.downLegs, std::optional(piece), &DownLeg::piece);
  return flat((leg->atStart ? study.points.front() : study.points.back()).at);
}

void checkPieces(Reporter& out, const Run& run, const PipeProduct& pipe, const RunStudy& study) {
  Length station;
  for (std::size_t i = 0; i < study.pieces.size(); ++i) {
    const PipePiece& piece = study.pieces[i];
    const Point2 place = piece.downLeg
                             ? legPlace(study, i)
                             : placeAt(study, inMetres(station + piece.centreToCentre / 2.0));
    station += piece.centreToCentre;
    const Length sockets = socketDepths(out.input().supplies, run, pipe, study, i);
    const Length left = piece.centreToCentre - piece.takeOut;
    const bool none = left <= metres(kRounding) && inMetres(piece.takeOut) > 0;
    if (!none && left >= sockets - kTapeHair) continue;
    const std::string mark = pieceMark(run.id, i);
    const std::string apart = printShort(piece.takeOut + sockets, out.units());
    Arguments told = {{"piece", mark}, {"apart", apart}};
    if (!none) {
      told["cut"] = printShort(piece.cut, out.units());
      told["sockets"] = printShort(sockets, out.units());
    }
    Finding& finding = out.report(none ? "none" : "short", {run.id}, std::move(told));
    finding.measured = printShort(piece.centreToCentre, out.units());
    finding.required = "at least " + apart;
    finding.which = std::to_string(i + 1);
    finding.place = place;
  }
}

void checkShortPipe(const RuleInput& input, const Rule& rule, std::vector<Finding>& findings) {
  Reporter out(input, rule, findings);
  for (std::size_t i = 0; i < input.study.runs.size(); ++i) {
    const Run& run = input.plan.runs[i];
    const PipeProduct* pipe = input.catalog.pipe(run.pipe);
    if (pipe != nullptr && input.study.runs[i].resolved)
      checkPieces(out, run, *pipe, input.study.runs[i]);
  }
  out.needLevels(unresolved(input));
}

} // namespace

const Rule kShortPipe = {"short-pipe",
                         "Between two fittings there is pipe enough for both sockets",
                         "Least socket lengths of Sch 80 solvent fittings (ASTM D2467) and "
                         "take-outs of the catalogue, from memory",
                         Confidence::FromMemory,
                         Severity::Warning,
                         checkShortPipe,
                         Trade::General};

} // namespace sump
