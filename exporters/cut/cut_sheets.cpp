#include "exporters/cut/cut_sheets.h"

#include <algorithm>

#include "exporters/cut/board_drawing.h"
#include "exporters/cut/boards_csv.h"
#include "exporters/cut/buy_rows.h"
#include "exporters/cut/fastener_rows.h"
#include "exporters/cut/list_rows.h"
#include "exporters/cut/sheet_drawing.h"
#include "exporters/cut/sheet_rows.h"
#include "exporters/file_name.h"
#include "exporters/sheets/page.h"

namespace exporters {
namespace {

constexpr double gap = 4;

// Blocks one under another in columns, as many sheets as they take; the title block keeps the foot of each sheet free.
class Flow {
 public:
  Flow(const Plan& plan, const Paper& paper, std::string shows, std::string document)
      : plan_(plan), paper_(paper), shows_(std::move(shows)), document_(std::move(document)) {}

  [[nodiscard]] double width() const { return drawing_space(paper_).width() - 2 * gap; }
  void set_columns(std::size_t columns) { columns_ = std::max<std::size_t>(1, columns); }
  [[nodiscard]] double room() const { return drawing_space(paper_).high.y - title_block_height - gap - y_; }
  [[nodiscard]] double room_of_a_sheet() const {
    return drawing_space(paper_).height() - title_block_height - 2 * gap;
  }
  // Starts a column, on a new sheet where this one has no more.
  void next_column() {
    if (pages_.empty() || ++column_ >= columns_) {
      const Space space = drawing_space(paper_);
      pages_.push_back(start_sheet(paper_, shows_, document_ + " of " + plan_.design.name));
      column_ = 0;
      top_ = space.low.y + gap;
    }
    y_ = top_;
  }
  void add(const Drawing& block, double below) {
    const Space space = drawing_space(paper_), size = extent(block);
    const double x =
        space.low.x + gap + static_cast<double>(column_) * width() / static_cast<double>(columns_);
    append(pages_.back(), block, Vec2{x, y_} - Vec2{0, size.low.y});
    y_ += size.height() + below;
  }
  // Over all columns; they start below it.
  void add_across(const Drawing& block) {
    add(block, gap);
    top_ = y_;
  }
  [[nodiscard]] std::vector<Drawing>& pages() { return pages_; }
  [[nodiscard]] const std::string& shows() const { return shows_; }
  [[nodiscard]] const std::string& document() const { return document_; }

 private:
  const Plan& plan_;
  Paper paper_;
  std::string shows_, document_;
  std::vector<Drawing> pages_;
  std::size_t column_ = 0, columns_ = 1;
  double y_ = 0, top_ = 0;
};

// Tables, broken over columns and sheets where they must be.
void add_tables(Flow& flow, const std::vector<Table>& tables) {
  double widest = 1;
  for (const Table& table : tables) widest = std::max(widest, extent(table_drawing(table)).width());
  flow.set_columns(static_cast<std::size_t>((flow.width() + gap) / (widest + gap)));
  if (flow.pages().empty()) flow.next_column();
  for (Table table : tables) {
    std::size_t next = 0;
    while (next < table.rows.size()) {
      const auto rows = static_cast<std::ptrdiff_t>(flow.room() / table_row_height) - 2;
      if (rows < 2) {
        flow.next_column();
        continue;
      }
      const std::size_t last = std::min(next + static_cast<std::size_t>(rows), table.rows.size());
      flow.add(table_drawing(table, next, last), gap);
      if (next == 0 && last < table.rows.size()) table.title += ", continued";
      next = last;
    }
  }
}

Drawing words(const std::vector<std::string>& sentences, double width) {
  Drawing out;
  double y = 0;
  for (const std::string& sentence : sentences)
    for (const std::string& line : wrapped(sentence, 2.5, width))
      out.label(Role::note, {0, y += 4.5}, line, {2.5});
  return out;
}

void add_boards(Flow& flow, const Plan& plan, const geometry::LengthStyle& style) {
  const std::vector<BoardLine> lines = board_lines(plan.cuts, style);
  double longest = 1;
  for (const BoardLine& line : lines) longest = std::max(longest, line.starts + line.length);
  const double scale = (flow.width() - board_caption_width - 4) / longest;
  flow.next_column();
  flow.add(words(board_sentences(plan.cuts, plan.design), flow.width()), gap);
  constexpr double between = 2.5;
  for (std::size_t i = 0; i < lines.size();) {
    // A ripped board's parts stay with its line where one sheet holds them all; else they begin on a sheet of their own.
    std::vector<Drawing> drawings;
    double needed = -between;
    do {
      drawings.push_back(board_drawing(lines[i], scale, style));
      needed += extent(drawings.back()).height() + between;
    } while (++i < lines.size() && lines[i].part);
    if (flow.room() < std::min(needed, flow.room_of_a_sheet() - between)) flow.next_column();
    for (const Drawing& drawing : drawings) {
      if (flow.room() < extent(drawing).height()) flow.next_column();
      flow.add(drawing, between);
    }
  }
}

void add_sheets(Flow& flow, const Plan& plan, const geometry::LengthStyle& style) {
  flow.next_column();
  flow.add(words({"Cut in the order of the numbers, each cut from edge to edge of the part it divides. Sizes "
                  "are along and "
                  "across the sheet; the grain runs along. Grey is left over. Rolls are drawn as long "
                  "sheets; strips of mesh that "
                  "lie side by side lap."},
                 flow.width()),
           gap);
  for (const models::SheetCutting& cutting : plan.cuts.sheets)
    for (const SheetGroup& group : sheet_groups(cutting)) {
      const Drawing drawing = sheet_drawing(cutting, group, flow.width(), 105, style);
      if (flow.room() < extent(drawing).height()) flow.next_column();
      flow.add(drawing, gap);
    }
}

struct NumberedSheets {
  const Plan& plan;
  Paper paper;
  std::vector<std::pair<TitleBlock, Drawing>> open;

  void add(Flow& flow) {
    for (Drawing& page : flow.pages()) {
      TitleBlock block;
      block.title = plan.design.name;
      block.subtitle = flow.shows();
      block.document = flow.document();
      block.scale = "none";
      block.units = plan.design.units == geometry::Units::in ? "feet and inches" : "millimetres";
      open.emplace_back(std::move(block), std::move(page));
    }
  }
  std::vector<SheetPage> finish() {
    std::vector<SheetPage> out;
    for (std::size_t i = 0; i < open.size(); ++i) {
      auto& [block, drawing] = open[i];
      block.sheet = static_cast<int>(i + 1);
      block.sheets = static_cast<int>(open.size());
      const std::string number = (i + 1 < 10 ? "0" : "") + std::to_string(i + 1);
      block.number = plan.name + "-C" + number;
      add_title_block(drawing, paper, block);
      out.push_back({number + "-" + file_name(block.subtitle) + ".svg", std::move(drawing)});
    }
    return out;
  }
};

}  // namespace

std::vector<SheetPage> cut_sheets(const Plan& plan) {
  const Paper paper = paper_for(plan.design.units);
  const geometry::LengthStyle style{plan.design.units};
  NumberedSheets sheets{plan, paper, {}};
  Flow list(plan, paper, "cut list", "cut list");
  add_tables(list, list_tables(plan.cuts.list, plan.building, style));
  sheets.add(list);
  if (!plan.cuts.plan.boards.empty()) {
    Flow boards(plan, paper, "boards", "cutting plan");
    add_boards(boards, plan, style);
    sheets.add(boards);
  }
  if (!plan.cuts.sheets.empty()) {
    Flow panels(plan, paper, "sheets and mesh", "cutting plan");
    add_sheets(panels, plan, style);
    sheets.add(panels);
  }
  if (!plan.cuts.fasteners.joints.empty()) {
    Flow joints(plan, paper, "fasteners", "fastening plan");
    joints.next_column();
    joints.add_across(words(fastener_sentences(plan.cuts), joints.width()));
    add_tables(joints, {fastener_table(plan.cuts, plan.building, style)});
    sheets.add(joints);
  }
  Flow buy(plan, paper, "what to buy", "shopping list");
  add_tables(buy, {buy_table(plan.cuts, plan.design)});
  sheets.add(buy);
  return sheets.finish();
}

void write_cut(const Plan& plan, const std::filesystem::path& out) {
  const geometry::LengthStyle style{plan.design.units};
  write_file(out / "cut" / "list.csv", list_csv(plan.cuts.list, plan.building, style));
  write_file(out / "cut" / "boards.csv", boards_csv(plan.cuts));
  write_file(out / "cut" / "sheets.csv", sheets_csv(plan.cuts));
  write_file(out / "cut" / "fasteners.csv", fastener_csv(plan.cuts, plan.building, style));
  write_file(out / "cut" / "buy.csv", buy_csv(plan.cuts, plan.design));
  for (const SheetPage& page : cut_sheets(plan)) write_file(out / "cut" / page.file, svg(page.drawing));
}

}  // namespace exporters
