// Independent answers for the skier on a leg, with a general-purpose optimiser (Ipopt) and none of the program's
// own lines: the run whose edge angle is given, the quickest rhythm past evenly set gates, and the quickest way
// through a whole set. Trapezoids throughout, exact first and second derivatives (jet.hpp), cosine rule.
//
//   jet.hpp      numbers that carry their derivatives
//   program.hpp  a nonlinear program put together from small formulas, handed to Ipopt
//   leg.hpp      the skier on a leg over skis on a path
//   run.hpp, line.hpp   the two collocations
//
// Source of the equations: the project's description of the skier, sections 1 to 4 (without the shear of the wall).
// Rhythms and sets are solved from a few crude starts and the best answer kept, sets also from one another's answers;
// a minimum found so is not proved global.
// Build (Debian's coinor-libipopt-dev, any C++17 compiler):
//   g++ -O2 -std=c++17 -DHAVE_CSTDDEF -I/usr/include/coin skier_by_ipopt.cpp -o /tmp/skier_by_ipopt -lipopt
// Run: /tmp/skier_by_ipopt > ../skier-by-ipopt.json, then format the json as the rest of the project (a quarter of an
// hour; made with Ipopt 3.11.9 and MUMPS 5.5). `/tmp/skier_by_ipopt sets` prints the rows of sets alone, and with
// `derivatives` Ipopt compares every first and second derivative with differences instead. A problem none of whose
// starts converges ends the program with an error.
#include <cstdio>
#include <cstdlib>
#include <cstring>
#include <optional>

#include "line.hpp"
#include "run.hpp"

namespace {

struct RunRow {
  double sidecutRadius, contactLength, peakEdge, period, slope, speedKmh;
  int turns;
};

const RunRow runRows[] = {
    {12.2, 1.36, 60, 2.4, 8, 24, 4},   {12.2, 1.36, 55, 2.4, 12, 25, 4},   {12.2, 1.36, 60, 1.6, 19, 39.6, 4},
    {30, 1.7, 55, 3.0, 16, 61.2, 4},   {12.2, 1.36, 8, 3.0, 15, 60.1, 4},  {12.2, 1.36, 70, 1.2, 20, 50.4, 8},
    {12.2, 1.36, 30, 4.0, 25, 72, 4},  {12.2, 1.36, 75, 2.0, 5, 18, 4},
};

struct LineRow {
  double sidecutRadius, contactLength, distance, offset, slope, clearance, load, legSpeed, pushRate, startSpeed;
};

const LineRow rhythmRows[] = {
    {12.5, 1.4, 10, 3.2, 19, 0.3, 3.0, 1.0, 12, 0}, {12.5, 1.4, 10, 3.2, 19, 0.3, 3.5, 2.5, 20, 0},
    {30, 1.6, 25, 8, 12, 0.5, 3.0, 1.0, 12, 0},     {30, 1.6, 25, 8, 12, 0.5, 2.5, 0.7, 10, 0},
    {30, 1.6, 25, 8, 12, 0.5, 2.5, 2.5, 20, 0},     {12.5, 1.6, 25, 8, 12, 0.5, 2.5, 2.5, 20, 0},
};

const LineRow setRows[] = {
    {30, 1.6, 25, 8, 14, 0.5, 2.8, 1, 12, 12},      {12.5, 1.6, 25, 8, 14, 0.5, 2.8, 1, 12, 12},
    {12.5, 1.4, 10, 3.2, 15, 0.3, 3.0, 1, 12, 9},   {13.0, 1.4, 10, 3.2, 15, 0.3, 3.0, 1, 12, 9},
    {30, 1.4, 10, 3.2, 15, 0.3, 3.0, 1, 12, 9},
};

constexpr int rhythmIntervals = 24, setIntervals = 12, gates = 10;

/// Right and left in turn, each half a period of a sine.
RunCase runCase(const RunRow& row, bool legSpeedFree) {
  RunCase c;
  c.skier = {75, 0.05, 0.4, 1.1, row.slope * degree, row.sidecutRadius, row.contactLength};
  c.startSpeed = row.speedKmh / 3.6;
  c.seconds = row.turns * row.period / 2;
  c.legSpeedFree = legSpeedFree;
  c.edge = [peak = row.peakEdge * degree, period = row.period](double t) {
    return peak * std::sin(2 * M_PI * t / period);
  };
  return c;
}

struct Change {
  double friction = 0, dragArea = 0, load = 0, legSpeed = 0, clearance = 0;
};

Line lineOf(const LineRow& row, const Change& by = {}) {
  return Line({80, 0.05 + by.friction, 0.45 + by.dragArea, 1.1, row.slope * degree, row.sidecutRadius,
               row.contactLength},
              {row.load + by.load, row.legSpeed + by.legSpeed, row.pushRate});
}

Line rhythmOf(const LineRow& row, double speed, const Change& by = {}) {
  Line line = lineOf(row, by);
  layRhythm(line, {row.distance, row.offset, row.clearance + by.clearance}, rhythmIntervals, speed);
  return line;
}

Line setOf(const LineRow& row, double speed) {
  Line line = lineOf(row);
  laySet(line, {row.distance, row.offset, row.clearance}, gates, setIntervals, row.startSpeed, speed);
  return line;
}

/// The quickest converged answer from these starts.
template <class Lay>
Line quickest(Lay lay, std::initializer_list<double> speeds, const char* what) {
  std::optional<Line> best;
  for (double speed : speeds) {
    Line line = lay(speed);
    const bool solved = line.program.solve();
    std::fprintf(stderr, "%s from %g m/s: %s, %.4f s, %d steps\n", what, speed, solved ? "solved" : "not solved",
                 line.seconds(), line.program.iterations);
    if (solved && (!best || line.seconds() < best->seconds())) best = std::move(line);
  }
  if (!best) {
    std::fprintf(stderr, "%s: no start converged\n", what);
    std::exit(1);
  }
  return std::move(*best);
}

/// Solved from the answer to almost the same problem, with the same mesh.
bool solveBeside(Line& line, const Line& known) {
  Program& p = line.program;
  for (size_t i = 0; i < p.x.size(); i++) {
    p.x[i] = std::min(p.upper[i], std::max(p.lower[i], known.program.x[i]));
  }
  return p.solve(1e-8, true);
}

/// Each pair from every other pair's answer on the same gates: gaps between pairs must not be gaps between minima.
void crossStart(std::vector<Line>& lines) {
  for (bool better = true; better;) {
    better = false;
    for (size_t i = 0; i < lines.size(); i++) {
      for (size_t k = 0; k < lines.size(); k++) {
        if (i == k || setRows[i].distance != setRows[k].distance) continue;
        Line line = setOf(setRows[i], 13);
        const bool solved = solveBeside(line, lines[k]);
        std::fprintf(stderr, "set %zu beside %zu: %s, %.4f s, %d steps\n", i, k, solved ? "solved" : "not solved",
                     line.seconds(), line.program.iterations);
        if (!solved || line.seconds() > lines[i].seconds() - 1e-3) continue;
        lines[i] = std::move(line);
        better = true;
      }
    }
  }
}

const char* separator(bool& first) {
  const char* s = first ? "" : ",";
  first = false;
  return s;
}

void printRun(const RunRow& row, bool legSpeedFree) {
  const RunCase c = runCase(row, legSpeedFree);
  const RunAnswer a = solveRun(c);
  if (!a.solved) {
    std::fprintf(stderr, "run %g m, %g deg: not solved\n", row.sidecutRadius, row.peakEdge);
    std::exit(1);
  }
  double load = 0, lean = 0, mismatch = 0, leg = 9;
  for (auto& n : a.nodes) {
    load = std::max(load, n[runLoad]);
    lean = std::max(lean, std::fabs(n[runLean]));
    mismatch = std::max(mismatch, std::fabs(n[runMismatch]));
    leg = std::min(leg, n[runLeg]);
  }
  std::printf("{\"sidecutRadiusM\":%g,\"contactLengthM\":%g,\"peakEdgeDeg\":%g,\"periodS\":%g,\"turns\":%d,"
              "\"slopeDeg\":%g,\"startKmh\":%g,\"startLegSpeed\":\"%s\",\n\"objective\":%.6g,\"endKmh\":%.6g,"
              "\"greatestLoadBw\":%.6g,\"greatestLeanDeg\":%.6g,\"greatestMismatchPerM\":%.5g,\"shortestLegM\":%.6g,"
              "\n\"samples\":[",
              row.sidecutRadius, row.contactLength, row.peakEdge, row.period, row.turns, row.slope, row.speedKmh,
              legSpeedFree ? "free" : "zero", a.objective, a.nodes.back()[runSpeed] * 3.6, load, lean / degree,
              mismatch, leg);
  bool first = true;
  for (size_t i = 0; i < a.nodes.size(); i += 10) {
    const auto& n = a.nodes[i];
    std::printf("%s{\"t\":%.6g,\"edge\":%.6g,\"heading\":%.6g,\"speed\":%.6g,\"lean\":%.6g,\"leanRate\":%.6g,"
                "\"leg\":%.6g,\"legSpeed\":%.6g,\"mismatch\":%.4g,\"loadBw\":%.6g}",
                separator(first), a.time[i], c.edge(a.time[i]), n[runHeading], n[runSpeed], n[runLean],
                n[runLeanRate], n[runLeg], n[runLegSpeed], n[runMismatch], n[runLoad]);
  }
  std::printf("]}\n");
}

void printInputs(const LineRow& row) {
  std::printf("{\"sidecutRadiusM\":%g,\"contactLengthM\":%g,\"distanceM\":%g,\"offsetM\":%g,\"slopeDeg\":%g,"
              "\"clearanceM\":%g,\"mostLoadBw\":%g,\"mostLegSpeed\":%g,\"mostPushRateBw\":%g,",
              row.sidecutRadius, row.contactLength, row.distance, row.offset, row.slope, row.clearance, row.load,
              row.legSpeed, row.pushRate);
}

void printLine(Line& line, int every) {
  double edge = 0, lean = 0, curvature = 0, skis = 0, mass = 0;
  for (int i = 0; i < line.nodes; i++) {
    edge = std::max(edge, std::fabs(line.value(i, Edge)));
    lean = std::max(lean, std::fabs(line.value(i, Lean)));
    curvature = std::max(curvature, std::fabs(line.curvature(i)));
    skis = std::max(skis, std::fabs(line.value(i, X)));
    const double offset = line.value(i, Leg) * std::sin(line.value(i, Lean));
    mass = std::max(mass, std::fabs(line.value(i, X) + offset * std::cos(line.value(i, Heading))));
  }
  std::printf("\"peakEdgeDeg\":%.4g,\"peakLeanDeg\":%.4g,\"leastRadiusM\":%.4g,\"skisAcrossM\":%.4g,"
              "\"massAcrossM\":%.4g,\n\"samples\":[",
              edge / degree, lean / degree, 1 / curvature, skis, mass);
  bool first = true;
  double t = 0;
  for (int i = 0; i < line.nodes; i++) {
    if (i % every == 0) {
      std::printf("%s{\"t\":%.6g,\"x\":%.6g,\"y\":%.6g,\"heading\":%.6g,\"speed\":%.6g,\"lean\":%.6g,\"leg\":%.6g,"
                  "\"edge\":%.6g,\"loadBw\":%.6g,\"mismatch\":%.4g,\"drift\":%.4g}",
                  separator(first), t, line.value(i, X), line.value(i, Y), line.value(i, Heading),
                  line.value(i, Speed), line.value(i, Lean), line.value(i, Leg), line.value(i, Edge),
                  line.value(i, Load), line.value(i, Mismatch), line.value(i, Drift));
    }
    if (i + 1 < line.nodes) t += line.program.x[line.interval[i]];
  }
  std::printf("]}\n");
}

/// Seconds over this many gates that a change is worth, the same rhythm solved anew from its own answer.
void printWorth(const char* what, LineRow row, int count, double slope) {
  row.slope = slope;
  const auto starts = {10.0, 13.0, 16.0, 20.0};
  Line base = quickest([&](double speed) { return rhythmOf(row, speed); }, starts, what);
  std::printf("{\"gates\":%d,\"inputs\":", count);
  printInputs(row);
  std::printf("\"secondsAGate\":%.6f},\n", base.seconds());
  const struct { const char* name; Change by; } changes[] = {
      {"friction", {-0.005, 0, 0, 0, 0}}, {"dragArea", {0, -0.05, 0, 0, 0}}, {"mostLoad", {0, 0, 0.2, 0, 0}},
      {"legSpeed", {0, 0, 0, 0.1, 0}},    {"clearance", {0, 0, 0, 0, -0.05}},
  };
  bool first = true;
  for (const auto& change : changes) {
    Line moved = rhythmOf(row, 16, change.by);
    if (!solveBeside(moved, base)) {
      std::fprintf(stderr, "%s, %s: not solved\n", what, change.name);
      std::exit(1);
    }
    std::printf("%s\"%s\":%.4f", separator(first), change.name, count * (moved.seconds() - base.seconds()));
  }
  std::printf("}\n");
}

void printSets() {
  std::vector<Line> lines;
  for (const LineRow& row : setRows) {
    const double pace = row.distance > 20 ? 18 : 13;
    lines.push_back(quickest([&](double speed) { return setOf(row, speed); }, {pace - 2, pace, pace + 2}, "set"));
  }
  crossStart(lines);
  bool first = true;
  for (size_t i = 0; i < lines.size(); i++) {
    std::printf("%s", separator(first));
    printInputs(setRows[i]);
    std::printf("\"startSpeed\":%g,\"gates\":%d,\n\"seconds\":%.6f,", setRows[i].startSpeed, gates,
                lines[i].seconds());
    printLine(lines[i], setIntervals);
  }
}

int compareDerivatives() {
  RunCase few = runCase(runRows[1], true);
  few.step = few.seconds / 8;
  solveRun(few, true);
  Line line = lineOf(rhythmRows[0]);
  layRhythm(line, {10, 3.2, 0.3}, 2, 13);
  line.program.checked = true;
  line.program.solve();
  return 0;
}

}  // namespace

int main(int argc, char** argv) {
  if (argc > 1 && !std::strcmp(argv[1], "derivatives")) return compareDerivatives();
  if (argc > 1 && !std::strcmp(argv[1], "sets")) return printSets(), 0;
  std::printf("{\"made\":\"skier/skier_by_ipopt.cpp; cosine rule, trapezoids, SI and radians inside samples, loads in "
              "body weights, right positive\",\n\"runs\":[");
  bool first = true;
  for (bool legSpeedFree : {true, false}) {
    for (const RunRow& row : runRows) {
      std::printf("%s", separator(first));
      printRun(row, legSpeedFree);
    }
  }
  std::printf("],\n\"rhythms\":[");
  first = true;
  for (const LineRow& row : rhythmRows) {
    Line line = quickest([&](double speed) { return rhythmOf(row, speed); }, {10.0, 13.0, 16.0, 20.0}, "rhythm");
    std::printf("%s", separator(first));
    printInputs(row);
    std::printf("\n\"secondsAGate\":%.6f,", line.seconds());
    printLine(line, 4);
  }
  std::printf("],\n\"worth\":[");
  printWorth("slalom", rhythmRows[0], 56, 15);
  std::printf(",");
  printWorth("giant slalom", rhythmRows[2], 40, rhythmRows[2].slope);
  std::printf("],\n\"sets\":[");
  printSets();
  std::printf("]}\n");
}
