#include "exporters/sheets/frame_sheet.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <optional>

#include "exporters/sheets/parts_table.h"
#include "exporters/sheets/rafter_figures.h"
#include "exporters/sheets/scale.h"

namespace exporters {
namespace {

constexpr double gap = 4;              // between blocks of a sheet, and from them to the frame
constexpr double tallest_strip = 120;  // of tables under the view

// Blocks one under another, the upper left corner at the origin.
Drawing stacked(const std::vector<Drawing>& blocks) {
  Drawing out;
  double y = 0;
  for (const Drawing& block : blocks) {
    const Space space = extent(block);
    append(out, block, Vec2{0, y} - space.low);
    y += space.height() + gap;
  }
  return out;
}

Drawing notes_block(const std::vector<std::string>& notes) {
  Drawing out;
  double y = 0;
  for (const std::string& note : notes)
    for (const std::string& line : wrapped(note, 2.5, 172)) out.label(Role::note, {0, y += 4.5}, line, {2.5});
  return out;
}

std::vector<std::string> standing_notes(const FrameSubject& subject) {
  std::vector<std::string> notes;
  if (subject.frame.kind != "truss")
    notes.push_back("Measure both diagonals before fixing: equal diagonals make a square frame.");
  notes.push_back("Seen from outside. Openings are clear sizes. Do not measure on the drawing.");
  return notes;
}

std::vector<Table> further_tables(const FrameSubject& subject) {
  std::vector<Table> tables;
  std::vector<std::size_t> marks;
  for (const std::size_t part : subject.frame.parts) {
    const std::size_t mark = subject.building.parts[part].mark;
    if (std::find(marks.begin(), marks.end(), mark) != marks.end()) continue;
    if (const auto figures = rafter_figures(subject.building, subject.frame, part)) {
      marks.push_back(mark);
      tables.push_back(rafter_table(*figures, subject.building.marks[mark].label, subject.style));
    }
  }
  return tables;
}

// Where the tables stand, and what that leaves for the view.
struct Arrangement {
  Space view;
  Vec2 tables;  // upper left corner
};

// Tables at the left of the title block, the view over both.
std::optional<Arrangement> tables_below(const Space& space, const Space& tables) {
  const double strip = std::max(title_block_height, tables.height() + gap);
  if (tables.width() > space.width() - title_block_width - 2 * gap || strip > tallest_strip) return {};
  const double top = space.high.y - strip;
  return Arrangement{{space.low + Vec2{gap, gap}, {space.high.x - gap, top - gap}}, {space.low.x + gap, top}};
}

// Tables over the title block, the view at the left of both.
std::optional<Arrangement> tables_right(const Space& space, const Space& tables) {
  const double column = std::max(title_block_width, tables.width() + gap);
  if (tables.height() > space.height() - title_block_height - 2 * gap || column > space.width() / 2)
    return {};
  const double left = space.high.x - column;
  return Arrangement{{space.low + Vec2{gap, gap}, {left - gap, space.high.y - gap}},
                     {left, space.low.y + gap}};
}

// How a sheet could be laid out.
struct Candidate {
  Drawing tables;
  Arrangement arrangement;
};
struct Choice {
  const Scale* scale = nullptr;
  std::size_t candidate = 0;
  FrameDrawing view;
};

// The frame's view at every scale that has been tried.
class Views {
 public:
  explicit Views(const FrameSubject& subject) : subject_(subject) {}
  const FrameDrawing& at(const Scale& scale) {
    const auto found = views_.find(scale.ratio);
    if (found != views_.end()) return found->second;
    return views_.emplace(scale.ratio, frame_view(subject_, scale.ratio)).first->second;
  }

 private:
  const FrameSubject& subject_;
  std::map<double, FrameDrawing> views_;
};

bool fits(const Space& what, const Space& where) {
  return what.width() <= where.width() && what.height() <= where.height();
}

// The largest scale at which the view fits into one of the candidates; the smallest scale there is when none
// does.
Choice choose(const FrameSubject& subject, Views& views, const std::vector<Candidate>& candidates) {
  const std::vector<Scale>& all = scales(subject.style.units);
  const Vec2 size{subject.frame.width.mm(), subject.frame.height.mm()};
  for (const Scale& scale : all) {
    const bool last = &scale == &all.back();
    const Vec2 bare = size * scale.ratio;
    const bool hopeless = std::none_of(candidates.begin(), candidates.end(), [&](const Candidate& c) {
      return bare.x <= c.arrangement.view.width() && bare.y <= c.arrangement.view.height();
    });
    if (hopeless && !last) continue;
    const FrameDrawing& view = views.at(scale);
    const Space needed = extent(view.drawing);
    for (std::size_t i = 0; i < candidates.size(); ++i)
      if (fits(needed, candidates[i].arrangement.view) || last) return {&scale, i, view};
  }
  return {};  // not reached: the last scale is always taken
}

TitleBlock title_block(const FrameSubject& subject, const std::string& design, const std::string& scale) {
  TitleBlock block;
  block.title = design;
  block.subtitle = subject.frame.name;
  block.document = "dimensioned drawing";
  block.scale = scale;
  block.units = subject.style.units == geometry::Units::in ? "feet and inches" : "millimetres";
  return block;
}

// Sheets with nothing but the rest of the parts table.
void add_table_sheets(std::vector<OpenSheet>& sheets, const FrameSubject& subject, const Paper& paper,
                      const std::string& design, const Table& table) {
  const Space space = drawing_space(paper);
  const double room = space.height() - title_block_height - 4 * gap;
  const auto per_column = static_cast<std::size_t>(room / table_row_height) - 2;
  const double width = extent(table_drawing(table)).width() + gap;
  const auto columns = std::max<std::size_t>(1, static_cast<std::size_t>((space.width() - 2 * gap) / width));
  std::size_t next = 0;
  while (next < table.rows.size()) {
    const std::string title = subject.frame.name + ", parts";
    OpenSheet sheet{start_sheet(paper, title, "Parts table of the " + subject.frame.name),
                    title_block(subject, design, "none")};
    sheet.block.subtitle = title;
    sheet.block.document = "parts list";
    for (std::size_t c = 0; c < columns && next < table.rows.size(); ++c) {
      const std::size_t last = std::min(next + per_column, table.rows.size());
      const Drawing part = table_drawing(table, next, last);
      append(sheet.drawing, part,
             space.low + Vec2{gap + static_cast<double>(c) * width, gap} - extent(part).low);
      next = last;
    }
    sheets.push_back(std::move(sheet));
  }
}

// The parts table in so many columns side by side.
Drawing in_columns(const Table& table, std::size_t columns) {
  Drawing out;
  const std::size_t rows = (table.rows.size() + columns - 1) / columns;
  double x = 0;
  for (std::size_t first = 0; first < table.rows.size(); first += rows) {
    Table part = table;
    if (first > 0) part.title = "continued";
    const Drawing drawing = table_drawing(part, first, std::min(first + rows, table.rows.size()));
    append(out, drawing, {x, 0});
    x += extent(drawing).high.x + gap;
  }
  return out;
}

class Layout {
 public:
  Layout(const FrameSubject& subject, const Paper& paper)
      : subject_(subject),
        space_(drawing_space(paper)),
        parts_(parts_table(subject.building, subject.frame, subject.style)),
        further_(further_tables(subject)) {}

  [[nodiscard]] const Table& parts() const { return parts_; }
  // With `columns` 0 the parts table is left to a sheet of its own.
  [[nodiscard]] std::vector<Candidate> candidates(std::size_t columns,
                                                  const std::vector<std::string>& notes) const {
    std::vector<Drawing> blocks;
    if (columns > 0) blocks.push_back(in_columns(parts_, columns));
    for (const Table& table : further_) blocks.push_back(table_drawing(table));
    std::vector<std::string> all = standing_notes(subject_);
    if (columns == 0) all.push_back("The parts of this frame stand on the next sheet.");
    all.insert(all.end(), notes.begin(), notes.end());
    blocks.push_back(notes_block(all));
    const Drawing tables = stacked(blocks);
    std::vector<Candidate> out;
    if (const auto a = tables_below(space_, extent(tables))) out.push_back({tables, *a});
    if (const auto a = tables_right(space_, extent(tables))) out.push_back({tables, *a});
    return out;
  }

 private:
  const FrameSubject& subject_;
  Space space_;
  Table parts_;
  std::vector<Table> further_;
};

std::vector<std::string> notes_of(const FrameDrawing& view) {
  std::vector<std::string> notes = view.notes;
  std::string marks = "No room to label every part of these marks: ";
  for (std::size_t i = 0; i < view.unlabelled.size(); ++i) {
    const auto begin = view.unlabelled.begin(), end = begin + static_cast<std::ptrdiff_t>(i);
    if (std::find(begin, end, view.unlabelled[i]) != end) continue;
    if (i > 0) marks += ", ";
    marks += view.unlabelled[i];
  }
  if (!view.unlabelled.empty()) notes.push_back(marks);
  return notes;
}

struct Chosen {
  Choice choice;
  Candidate candidate;
  bool with_parts = true;
};

// The parts table leaves for a sheet of its own only where it would cost half the scale of a small view.
Chosen laid_out(const Layout& layout, const FrameSubject& subject, Views& views,
                const std::vector<std::string>& notes) {
  constexpr double small = 1.0 / 15;
  std::vector<Candidate> with = layout.candidates(1, notes);
  for (Candidate& candidate : layout.candidates(2, notes)) with.push_back(std::move(candidate));
  const std::vector<Candidate> without = layout.candidates(0, notes);
  std::optional<Choice> best;
  if (!with.empty()) best = choose(subject, views, with);
  if (!best || best->scale->ratio < small) {
    Choice bare = choose(subject, views, without);
    if (!best || bare.scale->ratio >= 2 * best->scale->ratio) {
      const Candidate candidate = without.at(bare.candidate);
      return {std::move(bare), candidate, false};
    }
  }
  const Candidate candidate = with[best->candidate];
  return {std::move(*best), candidate, true};
}

}  // namespace

std::vector<OpenSheet> frame_sheets(const FrameSubject& subject, const Paper& paper,
                                    const std::string& design) {
  const Layout layout(subject, paper);
  Views views(subject);
  // The view's own notes take room, which may call for a smaller scale, and so for more notes: a few rounds,
  // after which what is still missing is named in one line.
  std::vector<std::string> notes;
  Chosen chosen = laid_out(layout, subject, views, notes);
  for (int round = 0; round < 3 && notes_of(chosen.choice.view) != notes; ++round) {
    notes = notes_of(chosen.choice.view);
    if (layout.candidates(0, notes).empty()) notes = {"Some labels found no room: see the cut list."};
    chosen = laid_out(layout, subject, views, notes);
  }

  std::vector<OpenSheet> out;
  OpenSheet sheet{start_sheet(paper, subject.frame.name,
                              "Dimensioned drawing of the " + subject.frame.name + " of " + design),
                  title_block(subject, design, chosen.choice.scale->label)};
  const Space view = extent(chosen.choice.view.drawing);
  const Space& room = chosen.candidate.arrangement.view;
  append(sheet.drawing, chosen.choice.view.drawing,
         (room.low + room.high) * 0.5 - (view.low + view.high) * 0.5);
  append(sheet.drawing, chosen.candidate.tables,
         chosen.candidate.arrangement.tables - extent(chosen.candidate.tables).low);
  out.push_back(std::move(sheet));
  if (!chosen.with_parts) add_table_sheets(out, subject, paper, design, layout.parts());
  return out;
}

}  // namespace exporters
