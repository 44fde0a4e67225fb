// The header as C++17 sees it: handles in unique_ptr, and names without mangling.
#include <axlewright.h>

#include <cstdio>
#include <memory>
#include <string>
#include <type_traits>

// A second declaration with C linkage is an error where the header's has another.
extern "C" double axw_engine_power_value(double torque, double engine_speed);
static_assert(std::is_same_v<decltype(axw_engine_power_value(0.0, 0.0)), double>);
static_assert(std::is_same_v<decltype(axw_version_number()), std::uint32_t>);

template <auto Free> struct Freed {
    template <class T> void operator()(T *handle) const
    {
        Free(handle);
    }
};
using Tyre = std::unique_ptr<axw_tyre_tyre, Freed<axw_tyre_tyre_free>>;
using Corner = std::unique_ptr<axw_spring_corner, Freed<axw_spring_corner_free>>;
using Table = std::unique_ptr<axw_table, Freed<axw_table_free>>;
static_assert(sizeof(Tyre) == sizeof(void *));

int main()
{
    int passed = 0, failed = 0;
    auto check = [&](bool holds, const char *what) {
        holds ? ++passed : ++failed;
        if (!holds)
            std::printf("%s\n", what);
    };

    axw_tyre_tyre *raw = nullptr;
    check(axw_tyre_tyre_new(R"({"marking": "225/70R15C 112/110R"})", &raw) == AXW_OK, "new");
    Tyre tyre(raw);
    double radius = 0.0;
    check(axw_tyre_tyre_rolling(tyre.get(), 0.0, &radius, nullptr, nullptr) == AXW_OK, "rolling");
    check(radius > 0.337 && radius < 0.339, "radius");

    const double worn[] = {0.0, 0.005, -1.0};
    axw_table *rows = nullptr;
    check(axw_tyre_tyre_wear_table(tyre.get(), worn, 3, &rows) == AXW_OK, "table");
    Table table(rows);
    check(axw_table_rows(table.get()) == 3, "rows");
    Tyre moved = std::move(tyre);
    check(!tyre && moved, "moved");

    axw_spring_corner *drawn = nullptr;
    check(axw_spring_corner_new(
              R"({"rate": "100 N/mm", "free_length": "320 mm", "solid_length": "165 mm", "minimum_gap": "15 mm",
                  "motion_ratio": 0.5, "sprung_mass": "400 kg", "droop_length": "300 mm", "damper_stroke": "110 mm", "damper_mounting": "coil_over"})",
              &drawn) == AXW_OK,
          "corner");
    Corner corner(drawn);
    axw_spring_corner_at_ride_height_result on;
    on.size = sizeof on;
    check(axw_spring_corner_at_ride_height(corner.get(), &on) == AXW_OK, "at ride height");
    check(on.sag > 0.116 && on.sag < 0.117 && std::string(on.ends_first) == "damper closed", "results");

    std::string message(axw_last_message(nullptr, 0), '\0');
    check(message == std::string(1, '\0'), "no failure yet, no message");
    check(axw_tyre_tyre_rolling(moved.get(), -1.0, &radius, nullptr, nullptr) == AXW_OUT_OF_RANGE, "refused");
    message.resize(axw_last_message(nullptr, 0));
    axw_last_message(message.data(), message.size());
    check(message.find("tread_worn = -1 m") != std::string::npos, "message");

    std::printf("%d passed, %d failed\n", passed, failed);
    return failed == 0 ? 0 : 1;
}
