// The whole run as one problem: the edge angle over time is given; heading, speed, lean and leg are sought.
#pragma once

#include <algorithm>
#include <functional>
#include <vector>

#include "leg.hpp"
#include "program.hpp"

struct RunCase {
  Skier skier;
  /// Signed edge angle over time, rad, and where it ends, s.
  std::function<double(double)> edge;
  double seconds;
  double startSpeed, startHeading = -20 * degree;
  double usualLeg = 0.9;
  /// Time between nodes, s, and the weight of Σ (ΔF)², F in body weights.
  double step = 0.02, calm = 1e-3;
  /// Lean rate and leg length are free at the start; the leg's speed is, too, or it is 0.
  bool legSpeedFree = true;
  double pushRate = 12, mismatch = 0.15, mismatchRate = 2;
};

/// What a node holds, in this order: six states, then two controls (load in body weights).
enum RunColumn { runHeading, runSpeed, runLean, runLeanRate, runLeg, runLegSpeed, runMismatch, runLoad, runColumns };

struct RunAnswer {
  bool solved;
  int iterations;
  double objective;
  std::vector<std::array<double, runColumns>> nodes;
  std::vector<double> time;
};

inline RunAnswer solveRun(const RunCase& c, bool checked = false) {
  Program p;
  p.checked = checked;
  const int intervals = static_cast<int>(std::lround(c.seconds / c.step));
  const double h = c.seconds / intervals;
  auto at = [](int node, RunColumn column) { return node * runColumns + column; };

  for (int i = 0; i <= intervals; i++) {
    const double mostLean = i == intervals ? 0.2 : 1.4;
    p.variable(c.startHeading);
    p.variable(c.startSpeed, 0.5);
    p.variable(std::min(mostLean, std::max(-mostLean, 0.8 * c.edge(i * h))), -mostLean, mostLean);
    p.variable(0);
    p.variable(c.usualLeg, 0.6, 1.0);
    p.variable(0, -1.5, 1.5);
    p.variable(0, -c.mismatch, c.mismatch);
    p.variable(1, 0.1, 8);
  }
  p.fix(at(0, runHeading), c.startHeading);
  p.fix(at(0, runSpeed), c.startSpeed);
  p.fix(at(0, runLean), 0);
  if (!c.legSpeedFree) p.fix(at(0, runLegSpeed), 0);

  for (int i = 0; i <= intervals; i++) {
    const double edge = c.edge(i * h), t = onEdge(edge);
    // Hold.
    p.subject<1, 1>(std::array<int, 1>{at(i, runLean)}, [t](const auto& in) { return std::array{in[0] * t}; },
                    {-unbounded}, {edge * t - c.skier.bevel + degree});
    const double weight = h * (i == 0 || i == intervals ? 0.5 : 1);
    p.minimise<2>(std::array<int, 2>{at(i, runMismatch), at(i, runLeg)},
                  [weight, usual = c.usualLeg](const auto& in) {
      const auto slip = in[0] / 0.02, reach = (in[1] - usual) / 0.1;
      return std::array{weight * (slip * slip + 0.05 * (reach * reach))};
    });
  }

  for (int i = 0; i < intervals; i++) {
    const double edge = c.edge(i * h), next = c.edge((i + 1) * h);
    std::array<int, 2 * runColumns> both;
    for (int k = 0; k < 2 * runColumns; k++) both[k] = at(i, runHeading) + k;
    p.subject<2 * runColumns, 6>(both, [skier = c.skier, edge, next, h](const auto& in) {
      using Number = std::decay_t<decltype(in[0])>;
      auto rates = [&](int o, double angle) {
        const Number mismatch = in[o + runMismatch];
        return ratesOnLeg<Number>(skier, in[o + runHeading], in[o + runSpeed], in[o + runLean], in[o + runLeanRate],
                                  in[o + runLeg], in[o + runLegSpeed], ownCurvature(skier, angle) + mismatch,
                                  mismatch, Number(0), in[o + runLoad]);
      };
      const int o = runColumns;
      const auto a = rates(0, edge), b = rates(o, next);
      const std::array<Number, 6> sums{a.heading + b.heading, a.speed + b.speed,
                                       in[runLeanRate] + in[o + runLeanRate], a.leanRate + b.leanRate,
                                       in[runLegSpeed] + in[o + runLegSpeed], a.legSpeed + b.legSpeed};
      std::array<Number, 6> r;
      for (int k = 0; k < 6; k++) r[k] = in[o + k] - in[k] - (h / 2) * sums[k];
      return r;
    }, {}, {});
    const std::array<int, 2> loads{at(i, runLoad), at(i + 1, runLoad)};
    const std::array<int, 2> mismatches{at(i, runMismatch), at(i + 1, runMismatch)};
    auto change = [](const auto& in) { return std::array{in[1] - in[0]}; };
    p.subject<2, 1>(loads, change, {-c.pushRate * h}, {c.pushRate * h});
    p.subject<2, 1>(mismatches, change, {-c.mismatchRate * h}, {c.mismatchRate * h});
    p.minimise<2>(loads, [calm = c.calm](const auto& in) {
      const auto d = in[1] - in[0];
      return std::array{calm * (d * d)};
    });
  }

  RunAnswer answer;
  answer.solved = p.solve();
  answer.iterations = p.iterations;
  answer.objective = p.objective;
  for (int i = 0; i <= intervals; i++) {
    std::array<double, runColumns> node;
    std::copy_n(p.x.begin() + at(i, runHeading), runColumns, node.begin());
    answer.nodes.push_back(node);
    answer.time.push_back(i * h);
  }
  return answer;
}
