// The quickest way past gates: the arc length of the skis' path is the independent variable of each stretch between
// two events (start, gate, finish, half way), its length an unknown. Trapezoids.
#pragma once

#include <vector>

#include "leg.hpp"
#include "program.hpp"

struct Limits {
  double mostLoad, legSpeed, pushRate;
  double shortestLeg = 0.65, longestLeg = 1.0, leastLoad = 0.1;
  double edge = 70 * degree, angulation = 40 * degree, edgeRate = 8;
  double mismatch = 0.15, drift = 0.6, mismatchRate = 2, driftRate = 4;
};

/// What a node holds, in this order: nine states, then four controls.
enum Column { X, Y, Heading, Speed, Lean, LeanRate, Leg, LegSpeed, Edge, EdgeRate, Load, Mismatch, Drift, columns };

struct Line {
  Program program;
  Skier skier;
  Limits limits;
  int nodes = 0;
  /// First variable of each node; the time of each interval.
  std::vector<int> first, interval;

  Line(Skier s, Limits l) : skier(s), limits(l) {}

  double& value(int node, Column c) { return program.x[first[node] + c]; }

  int node(const std::array<double, columns>& guess) {
    const Limits& l = limits;
    const double lean = 1.4, free = unbounded;
    const double lo[columns] = {-free, -free, -1.5, 1, -lean, -free, l.shortestLeg, -l.legSpeed, -l.edge,
                                -l.edgeRate, l.leastLoad, -l.mismatch, 0};
    const double hi[columns] = {free, free, 1.5, free, lean, free, l.longestLeg, l.legSpeed, l.edge,
                                l.edgeRate, l.mostLoad, l.mismatch, l.drift};
    first.push_back(static_cast<int>(program.x.size()));
    for (int c = 0; c < columns; c++) {
      program.variable(std::min(hi[c], std::max(lo[c], guess[c])), lo[c], hi[c]);
    }
    const int at = first.back();
    // Hold, and angulation.
    program.subject<2, 2>(std::array<int, 2>{at + Edge, at + Lean},
                          [](const auto& in) {
      const auto t = onEdge(in[0]);
      return std::array{in[1] * t - in[0] * t, in[0] - in[1]};
    }, {-unbounded, -l.angulation}, {degree - skier.bevel, l.angulation});
    // Keeps the edge rate from chattering.
    program.minimise<1>(std::array<int, 1>{at + EdgeRate},
                        [](const auto& in) { return std::array{1e-6 * (in[0] * in[0])}; });
    return nodes++;
  }

  /// Joins node k to node k + 1, `intervals` of which make the stretch of this length.
  void join(int k, int length, int intervals) {
    const double guess = program.x[length] / intervals / program.x[first[k] + Speed];
    const int time = program.variable(guess, 0);
    interval.push_back(time);
    // Motion, and the time it takes.
    std::array<int, 2 * columns + 2> at;
    for (int c = 0; c < columns; c++) at[c] = first[k] + c, at[columns + c] = first[k + 1] + c;
    at[2 * columns] = length;
    at[2 * columns + 1] = time;
    program.subject<2 * columns + 2, 10>(at, [s = skier, intervals](const auto& in) {
      using J = std::decay_t<decltype(in[0])>;
      auto perMetre = [&](int o) {
        const J curvature = ownCurvature(s, in[o + Edge]) + in[o + Mismatch];
        const auto r = ratesOnLeg<J>(s, in[o + Heading], in[o + Speed], in[o + Lean], in[o + LeanRate], in[o + Leg],
                                     in[o + LegSpeed], curvature, in[o + Mismatch], in[o + Drift], in[o + Load]);
        using std::cos;
        using std::sin;
        const J slow = 1.0 / r.ski;
        return std::array<J, 10>{sin(in[o + Heading]), cos(in[o + Heading]), curvature, r.speed * slow,
                                 in[o + LeanRate] * slow, r.leanRate * slow, in[o + LegSpeed] * slow,
                                 r.legSpeed * slow, in[o + EdgeRate] * slow, slow};
      };
      const auto a = perMetre(0), b = perMetre(columns);
      const J w = in[2 * columns] / (2.0 * intervals);
      std::array<J, 10> r;
      for (int c = 0; c < 9; c++) r[c] = in[columns + c] - in[c] - w * (a[c] + b[c]);
      r[9] = in[2 * columns + 1] - w * (a[9] + b[9]);
      return r;
    }, {}, {});
    rate(k, Load, limits.pushRate, time);
    rate(k, Mismatch, limits.mismatchRate, time);
    rate(k, Drift, limits.driftRate, time);
    program.minimise<1>(std::array<int, 1>{time}, [](const auto& in) { return std::array{in[0]}; });
  }

  /// Bounds how fast a control changes.
  void rate(int k, Column c, double most, int time) {
    program.subject<3, 2>(std::array<int, 3>{first[k] + c, first[k + 1] + c, time}, [most](const auto& in) {
      const auto d = in[1] - in[0];
      return std::array{d - most * in[2], -1.0 * d - most * in[2]};
    }, {-unbounded, -unbounded}, {0, 0});
  }

  void fix(int node, Column c, double v) { program.fix(first[node] + c, v); }

  double seconds() const {
    double t = 0;
    for (int i : interval) t += program.x[i];
    return t;
  }

  double curvature(int k) { return ownCurvature(skier, value(k, Edge)) + value(k, Mismatch); }
};

struct Pairing {
  double distance, offset, clearance;
};

/// Half a period with mirrored ends, from half way between two gates to half way to the next.
inline void layRhythm(Line& line, const Pairing& set, int perPhase, double speed) {
  Program& p = line.program;
  const double s = set.distance, reach = set.offset / 2 + set.clearance;
  const int lengths[2] = {p.variable(s / 2 * 1.1, s / 2), p.variable(s / 2 * 1.1, s / 2)};
  const int total = 2 * perPhase;
  for (int i = 0; i <= total; i++) {
    const double y = s * i / total, w = M_PI / s;
    const double heading = std::atan(reach * w * std::cos(w * y));
    const double lean = -0.8 * std::sin(w * y);
    line.node({reach * std::sin(w * y), y, heading, speed, lean, -0.8 * w * speed * std::cos(w * y), 0.9, 0,
               1.1 * lean, 0, 1.5, 0, 0});
  }
  for (int i = 0; i < total; i++) line.join(i, lengths[i / perPhase], perPhase);
  line.fix(0, Y, 0);
  line.fix(total, Y, s);
  line.fix(perPhase, X, reach);
  line.fix(perPhase, Y, s / 2);
  auto tie = [&](Column c, double sign) {
    p.subject<2, 1>(std::array<int, 2>{line.first[0] + c, line.first[total] + c},
                    [sign](const auto& in) { return std::array{in[1] - sign * in[0]}; }, {0}, {0});
  };
  for (Column c : {X, Heading, Lean, LeanRate, Edge, EdgeRate, Mismatch}) tie(c, -1);
  for (Column c : {Speed, Leg, LegSpeed, Load, Drift}) tie(c, 1);
}

/// A whole set: from the start past `gates` gates, right first, to a finish one distance below the last.
inline void laySet(Line& line, const Pairing& set, int gates, int perStretch, double startSpeed, double cruise) {
  Program& p = line.program;
  const double s = set.distance, reach = set.offset / 2 + set.clearance, w = M_PI / s;
  std::vector<int> lengths;
  for (int k = 0; k <= gates; k++) lengths.push_back(p.variable(s * 1.1, s));
  const int total = (gates + 1) * perStretch;
  for (int i = 0; i <= total; i++) {
    const double y = s * i / perStretch;
    // Half a wave later than the rhythm: the first gate, at y = s, is the first crest.
    const double fade = std::min(1.0, std::min(y, s * (gates + 1) - y) / s);
    const double wave = -std::cos(w * y), slope = std::sin(w * y);
    const double speed = startSpeed + (cruise - startSpeed) * std::min(1.0, y / (4 * s));
    const double lean = -0.8 * fade * wave;
    line.node({reach * fade * wave, y, std::atan(reach * w * slope), speed, lean, -0.8 * fade * w * speed * slope,
               0.9, 0, 1.1 * lean, 0, 1.5, 0, 0});
  }
  for (int i = 0; i < total; i++) line.join(i, lengths[i / perStretch], perStretch);
  for (Column c : {X, Y, Lean, LeanRate, LegSpeed, Edge}) line.fix(0, c, 0);
  line.fix(0, Speed, startSpeed);
  auto within = [&](int node, Column c, double lo, double hi) {
    p.lower[line.first[node] + c] = lo;
    p.upper[line.first[node] + c] = hi;
  };
  within(0, Heading, -0.1, 1.2);
  for (int k = 1; k <= gates; k++) {
    line.fix(k * perStretch, X, k % 2 ? reach : -reach);
    line.fix(k * perStretch, Y, k * s);
  }
  line.fix(total, Y, (gates + 1) * s);
  line.fix(total, Lean, 0);
  line.fix(total, Edge, 0);
  within(total, Heading, -20 * degree, 20 * degree);
}
