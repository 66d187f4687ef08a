// Draws the pictures of docs/elements.md anew. Run it from anywhere: draw_element_pictures [PROJECT]
#include <cstdio>
#include <exception>

#include "exporters/plan.h"
#include "support/element_pictures.h"

int main(int count, char** arguments) {
  const std::string project = count > 1 ? arguments[1] : PROJECT_DIR;
  try {
    for (const support::ElementPicture& picture : support::element_pictures(project))
      exporters::write_file(project + "/docs/images/elements/" + picture.name + ".svg", svg(picture.drawing));
  } catch (const std::exception& error) {
    std::fprintf(stderr, "%s\n", error.what());
    return 1;
  }
  return 0;
}
