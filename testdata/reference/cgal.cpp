// Times CGAL laying a panel flat.
//
//   cgal PANEL.off
//
// Prints, a line each, the method, its processor time in ms, and the greatest strain of all triangles and
// the strain that 95 % of the area stays below, as fractions: the larger of |σ1−1| and |σ2−1|, after the
// flat panel has been scaled so that its area is the surface's.
#include <CGAL/Polygon_mesh_processing/measure.h>
#include <CGAL/Simple_cartesian.h>
#include <CGAL/Surface_mesh.h>
#include <CGAL/Surface_mesh_parameterization/ARAP_parameterizer_3.h>
#include <CGAL/Surface_mesh_parameterization/LSCM_parameterizer_3.h>
#include <CGAL/Surface_mesh_parameterization/parameterize.h>

#include <algorithm>
#include <cmath>
#include <ctime>
#include <fstream>
#include <iostream>
#include <stdexcept>
#include <utility>
#include <vector>

namespace {

using Kernel = CGAL::Simple_cartesian<double>;
using Mesh = CGAL::Surface_mesh<Kernel::Point_3>;
using Flat = Mesh::Property_map<Mesh::Vertex_index, Kernel::Point_2>;
namespace lay = CGAL::Surface_mesh_parameterization;

struct Triangle {
  double area; // on the surface
  double most, least; // stretch of the map to the plane
};

Triangle measure(const Mesh &mesh, const Flat &flat, Mesh::Face_index face) {
  std::vector<Mesh::Vertex_index> v;
  for (auto w : vertices_around_face(mesh.halfedge(face), mesh)) v.push_back(w);
  const auto a = mesh.point(v[1]) - mesh.point(v[0]), b = mesh.point(v[2]) - mesh.point(v[0]);
  const auto p = flat[v[1]] - flat[v[0]], q = flat[v[2]] - flat[v[0]];
  // The triangle in its own plane: (x1, 0) and (x2, y2); columns of the map by solving against these.
  const double x1 = std::sqrt(a * a), x2 = a * b / x1, y2 = std::sqrt(std::max(0.0, b * b - x2 * x2));
  const double m00 = p.x() / x1, m10 = p.y() / x1;
  const double m01 = (q.x() - m00 * x2) / y2, m11 = (q.y() - m10 * x2) / y2;
  const double sum = std::hypot(m00 + m11, m10 - m01) / 2, difference = std::hypot(m00 - m11, m10 + m01) / 2;
  return {x1 * y2 / 2, sum + difference, sum - difference};
}

void report(const char *method, double ms, const Mesh &mesh, const Flat &flat) {
  std::vector<Triangle> all;
  double surface = 0, plane = 0;
  for (auto face : mesh.faces()) {
    all.push_back(measure(mesh, flat, face));
    surface += all.back().area;
    plane += all.back().area * std::abs(all.back().most * all.back().least);
  }
  const double scale = std::sqrt(surface / plane);
  std::vector<std::pair<double, double>> strains; // strain, area
  for (const Triangle &t : all)
    strains.emplace_back(std::max(std::abs(t.most * scale - 1), std::abs(std::abs(t.least) * scale - 1)), t.area);
  std::sort(strains.begin(), strains.end());
  double sum = 0, p95 = 0;
  for (auto [strain, area] : strains) {
    if (sum >= 0.95 * surface) break;
    sum += area;
    p95 = strain;
  }
  std::cout << method << ' ' << ms << ' ' << strains.back().first << ' ' << p95 << std::endl;
}

template <typename Method> void run(const char *name, Mesh &mesh) {
  Flat flat = mesh.add_property_map<Mesh::Vertex_index, Kernel::Point_2>(name).first;
  const std::clock_t start = std::clock();
  const auto border = CGAL::Polygon_mesh_processing::longest_border(mesh).first;
  if (lay::parameterize(mesh, Method(), border, flat) != lay::OK) throw std::runtime_error(name);
  report(name, 1e3 * double(std::clock() - start) / CLOCKS_PER_SEC, mesh, flat);
}

} // namespace

int main(int argc, char **argv) try {
  if (argc != 2) throw std::runtime_error("use: cgal PANEL.off");
  Mesh mesh;
  std::ifstream file(argv[1]);
  if (!(file >> mesh)) throw std::runtime_error("cannot read the panel");
  run<lay::LSCM_parameterizer_3<Mesh>>("lscm", mesh);
  run<lay::ARAP_parameterizer_3<Mesh>>("arap", mesh);
} catch (const std::exception &fault) {
  std::cerr << fault.what() << '\n';
  return 1;
}
