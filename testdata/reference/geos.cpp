// Times GEOS on the slices of a figure.
//
//   geos SECTIONS ROUNDS
//
// SECTIONS is a text of one outline a line, "x y x y …" in millimetres, the first point not repeated.
// Prints, a line each, what was done, the least processor time of all rounds in ms, and a sum by
// which one sees that the work was done: area in mm² or length in mm.
#include <geos_c.h>

#include <algorithm>
#include <ctime>
#include <fstream>
#include <iostream>
#include <sstream>
#include <stdexcept>
#include <string>
#include <vector>

namespace {

constexpr double distance = 6;       // mm: a sheet of wadding
constexpr int segmentsAQuadrant = 8; // GEOS's own default

std::vector<GEOSGeometry *> readOutlines(const char *path) {
  std::ifstream file(path);
  std::vector<GEOSGeometry *> outlines;
  for (std::string line; std::getline(file, line);) {
    std::istringstream words(line);
    std::vector<double> xy;
    for (double v; words >> v;) xy.push_back(v);
    xy.push_back(xy.at(0));
    xy.push_back(xy.at(1));
    GEOSCoordSequence *points = GEOSCoordSeq_copyFromBuffer(xy.data(), xy.size() / 2, 0, 0);
    outlines.push_back(GEOSGeom_createPolygon(GEOSGeom_createLinearRing(points), nullptr, 0));
  }
  if (outlines.empty()) throw std::runtime_error("no outlines");
  return outlines;
}

// Does the same with every outline, rounds times, and prints the fastest round.
template <typename Make, typename Measure>
void time(const char *what, int rounds, const std::vector<GEOSGeometry *> &outlines, Make make, Measure measure) {
  double least = 1e30, sum = 0;
  for (int round = 0; round < rounds; ++round) {
    std::vector<GEOSGeometry *> made;
    const std::clock_t start = std::clock();
    for (GEOSGeometry *outline : outlines) made.push_back(make(outline));
    least = std::min(least, 1e3 * double(std::clock() - start) / CLOCKS_PER_SEC);
    sum = 0;
    for (GEOSGeometry *g : made) {
      double v = 0;
      measure(g, &v);
      sum += v;
      GEOSGeom_destroy(g);
    }
  }
  std::cout << what << ' ' << least << ' ' << sum << '\n';
}

} // namespace

int main(int argc, char **argv) try {
  if (argc != 3) throw std::runtime_error("use: geos SECTIONS ROUNDS");
  initGEOS(nullptr, nullptr);
  const auto outlines = readOutlines(argv[1]);
  const int rounds = std::stoi(argv[2]);
  std::cout.precision(12);
  time("offset", rounds, outlines,
       [](GEOSGeometry *g) { return GEOSBuffer(g, distance, segmentsAQuadrant); }, GEOSArea);
  time("hull", rounds, outlines, GEOSConvexHull, GEOSLength);
  finishGEOS();
} catch (const std::exception &fault) {
  std::cerr << fault.what() << '\n';
  return 1;
}
