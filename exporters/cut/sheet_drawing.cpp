#include "exporters/cut/sheet_drawing.h"

#include <algorithm>

#include "exporters/lettering.h"
#include "exporters/table.h"
#include "models/cut_order.h"

namespace exporters {
namespace {

using models::cutting::Nanometres;
using models::cutting::Rectangle;
using models::cutting::Sheet;

constexpr double mark_cap = 2.5, small_cap = 1.8, caption = 6;

double millimetres(Nanometres n) { return models::length_of(n).mm(); }

bool alike(const Sheet& a, const Sheet& b) {
  if (a.stock != b.stock || a.pieces.size() != b.pieces.size()) return false;
  for (std::size_t i = 0; i < a.pieces.size(); ++i)
    if (a.pieces[i].piece != b.pieces[i].piece || !(a.pieces[i].at == b.pieces[i].at)) return false;
  return true;
}

// Writes a text in the box's middle, upright where it only fits so; whether it fitted.
bool write_in(Drawing& out, const Space& box, const std::string& text, double cap, Vec2 middle) {
  const double wide = text_width(text, cap) + 0.8, high = cap * 1.4 + 0.6;
  const bool level = wide <= box.width() && high <= box.height(),
             upright = wide <= box.height() && high <= box.width();
  if (!level && !upright) return false;
  const Label label = centred(Role::mark, middle, text, cap, level ? 0 : 90);
  if (!out.is_free(text_box(label), 0.2)) return false;
  out.labels.push_back(label);
  return true;
}

}  // namespace

std::vector<SheetGroup> sheet_groups(const models::SheetCutting& cutting) {
  const std::vector<Sheet>& sheets = cutting.plan.sheets;
  std::vector<SheetGroup> groups;
  for (std::size_t i = 0; i < sheets.size();) {
    std::size_t end = i + 1;
    while (end < sheets.size() && alike(sheets[i], sheets[end])) ++end;
    groups.push_back({static_cast<int>(i) + 1, static_cast<int>(end), i});
    i = end;
  }
  return groups;
}

Drawing sheet_drawing(const models::SheetCutting& cutting, const SheetGroup& group, double width,
                      double height, const geometry::LengthStyle& style) {
  const Sheet& sheet = cutting.plan.sheets[group.index];
  const auto& stock = cutting.order.stock[static_cast<std::size_t>(sheet.stock)];
  const double x = millimetres(stock.x), y = millimetres(stock.y);
  // One for all sheets of the kind: an offcut is drawn as small as it is.
  double scale = std::min(width / x, (height - caption) / y);
  for (const Sheet& other : cutting.plan.sheets) {
    const auto& size = cutting.order.stock[static_cast<std::size_t>(other.stock)];
    scale = std::min({scale, width / millimetres(size.x), (height - caption) / millimetres(size.y)});
  }
  const auto print = [&](Nanometres n) { return print_length(geometry::mm(millimetres(n)), style); };
  Drawing out;
  std::string title =
      cutting.stock + ", " + print(stock.x) + " x " + print(stock.y) +
      (stock.at_hand ? ", at hand: " + cutting.labels[static_cast<std::size_t>(sheet.stock)] + "; no. "
                     : ": no. ") +
      std::to_string(group.first);
  if (group.last > group.first)
    title +=
        " to " + std::to_string(group.last) + ", " + std::to_string(group.last - group.first + 1) + " alike";
  out.label(Role::note, {0, 4}, fitted(title, mark_cap, width), {mark_cap});
  // On the page y runs down; the sheet's lower left corner is at the lower left.
  const auto space = [&](const Rectangle& r) {
    return Space{{millimetres(r.x) * scale, caption + (y - millimetres(r.y + r.height)) * scale},
                 {millimetres(r.x + r.width) * scale, caption + (y - millimetres(r.y)) * scale}};
  };
  const auto box = [&](const Space& s, const Pen& pen, std::string_view fill) {
    out.strokes.push_back(
        {Role::waste, {s.low, {s.high.x, s.low.y}, s.high, {s.low.x, s.high.y}}, true, pen, fill});
  };
  box({{0, caption}, {x * scale, caption + y * scale}}, {wide_line}, "#e4e4e4");
  for (const auto& placed : sheet.pieces) {
    const Space s = space(placed.at);
    box(s, {medium_line}, "#ffffff");
    const auto& piece = cutting.order.pieces[static_cast<std::size_t>(placed.piece)];
    const Vec2 middle = (s.low + s.high) * 0.5;
    const bool large = s.height() > 9 && s.width() > 16;
    write_in(out, s, piece.mark, mark_cap, middle - Vec2{0, large ? 2.0 : 0.0});
    if (large)
      write_in(out, s, print(placed.at.width) + " x " + print(placed.at.height), small_cap,
               middle + Vec2{0, 2});
  }
  const auto on_cut = [&](const models::cutting::SheetCut& cut, double fraction) {
    const Space part = space(cut.part);
    return cut.along_y
               ? Vec2{millimetres(cut.at) * scale, part.low.y + part.height() * fraction}
               : Vec2{part.low.x + part.width() * fraction, caption + (y - millimetres(cut.at)) * scale};
  };
  // The cuts' numbers stand on them, where there is room.
  for (std::size_t i = 0; i < sheet.cuts.size(); ++i) {
    const auto& cut = sheet.cuts[i];
    const std::string number = std::to_string(i + 1);
    for (const double fraction : {0.5, 0.3, 0.7, 0.15, 0.85}) {
      const Vec2 at = on_cut(cut, fraction);
      Label label = centred(Role::dimension, at, number, small_cap);
      label.mask = true;
      if (!out.is_free(text_box(label), 0.3)) continue;
      out.labels.push_back(label);
      break;
    }
  }
  // Their lines come last: a number may stand on its own. They show where a cut runs through what is left over.
  for (const auto& cut : sheet.cuts) out.line(Role::waste, on_cut(cut, 0), on_cut(cut, 1), {narrow_line});
  return out;
}

}  // namespace exporters
