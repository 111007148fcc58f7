/* Times Cairo writing 60 pages of A0 with the same outlines on each.
 *
 *   cairo OUTLINES FILE.pdf
 *
 * OUTLINES is a text of one closed outline a line, "x y x y …" in millimetres from the page's lower left.
 * Prints "pdf", the processor time in ms, and the size of the file in bytes. */
#include <cairo-pdf.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <time.h>

enum { pages = 60, most_outlines = 1000, most_points = 1000 };
static const double point = 72 / 25.4; /* of a millimetre */

struct outline {
  int n;
  double xy[2 * most_points];
};

/* Reads one outline; 0 at the end of the file. */
static int read_outline(FILE *f, struct outline *o) {
  char *line = NULL;
  size_t room = 0;
  o->n = 0;
  if (getline(&line, &room, f) > 0)
    for (char *word = strtok(line, " \n"); word && o->n < 2 * most_points; word = strtok(NULL, " \n"))
      o->xy[o->n++] = strtod(word, NULL);
  free(line);
  o->n /= 2;
  return o->n;
}

static void draw(cairo_t *c, const struct outline *o) {
  cairo_move_to(c, o->xy[0], o->xy[1]);
  for (int i = 1; i < o->n; i++) cairo_line_to(c, o->xy[2 * i], o->xy[2 * i + 1]);
  cairo_close_path(c);
  cairo_stroke(c);
}

int main(int argc, char **argv) {
  static struct outline outlines[most_outlines];
  FILE *f = argc == 3 ? fopen(argv[1], "r") : NULL;
  if (!f) {
    fputs("use: cairo OUTLINES FILE.pdf\n", stderr);
    return 1;
  }
  int n = 0;
  while (n < most_outlines && read_outline(f, &outlines[n])) n++;
  fclose(f);

  clock_t start = clock();
  cairo_surface_t *pdf = cairo_pdf_surface_create(argv[2], 841 * point, 1189 * point);
  cairo_t *c = cairo_create(pdf);
  for (int page = 0; page < pages; page++) {
    cairo_save(c);
    cairo_translate(c, 0, 1189 * point);
    cairo_scale(c, point, -point);
    cairo_set_line_width(c, 0.5);
    for (int i = 0; i < n; i++) draw(c, &outlines[i]);
    cairo_restore(c);
    cairo_show_page(c);
  }
  cairo_destroy(c);
  cairo_surface_finish(pdf);
  double ms = 1e3 * (double)(clock() - start) / CLOCKS_PER_SEC;
  int wrong = cairo_surface_status(pdf) != CAIRO_STATUS_SUCCESS;
  cairo_surface_destroy(pdf);

  struct stat file;
  if (wrong || stat(argv[2], &file)) {
    fputs("the file could not be written\n", stderr);
    return 1;
  }
  printf("pdf %.3f %lld\n", ms, (long long)file.st_size);
  return 0;
}
