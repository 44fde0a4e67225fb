-- The C library through LuaJIT's foreign functions. Given: the declarations, the constants and the path of the library.
local declared, status, path = ...
local ffi = require("ffi")
ffi.cdef(declared)
local lib = ffi.load(path)
local passed, failed = 0, 0

local function check(holds, what)
    if holds then
        passed = passed + 1
    else
        failed = failed + 1
        print(what)
    end
end

local function message()
    local buffer = ffi.new("char[1000]")
    lib.axw_last_message(buffer, 1000)
    return ffi.string(buffer)
end

local function ok(call)
    check(call == status.AXW_OK, "status " .. call .. ": " .. message())
end

local CORNER = [[{"rate": "450 lbf/in", "free_length": "320 mm", "solid_length": "165 mm", "minimum_gap": "15 mm", "motion_ratio": 0.62,
"sprung_mass": "545 kg", "droop_length": "300 mm", "damper_stroke": "110 mm", "damper_mounting": "coil_over"}]]
local SHEET = [[version = 1
[front]
sprung_mass = "545 kg"
[front.spring]
rate = "550 lbf/in +/- 3 %"
motion_ratio = 0.6
[front.wanted]
frequency_low = "1.2 Hz"
frequency_high = "1.5 Hz"
]]

-- A function, and text with its unit.
local rate, buffer = ffi.new("double[1]"), ffi.new("char[40]")
ok(lib.axw_text_read("300 lbf/in", "linear stiffness", rate))
ok(lib.axw_spring_wheel_rate(rate[0], 0.62, 0, rate))
ok(lib.axw_text_print(rate[0], "linear stiffness", status.AXW_METRIC, buffer, 40, nil))
check(ffi.string(buffer) == "20.2 N/mm", ffi.string(buffer))
-- An error and its message.
local refused = lib.axw_spring_wheel_rate(50000, 62, 0, rate)
check(refused == status.AXW_OUT_OF_RANGE and message():find("motion_ratio = 62", 1, true), message())
-- A model of JSON text.
local corner, on = ffi.new("axw_spring_corner *[1]"), ffi.new("axw_spring_corner_at_ride_height_result")
ok(lib.axw_spring_corner_new(CORNER, corner))
on.size = ffi.sizeof(on)
ok(lib.axw_spring_corner_at_ride_height(corner[0], on))
check(math.abs(on.sag - 0.144) < 5e-4 and ffi.string(on.ends_first) == "damper closed", "the corner")
lib.axw_spring_corner_free(corner[0])
-- A sheet and its assessment.
local sheet, assessment = ffi.new("axw_sheet *[1]"), ffi.new("axw_assessment *[1]")
local finding, margin = ffi.new("size_t[1]"), ffi.new("double[1]")
ok(lib.axw_sheet_new(SHEET, sheet))
ok(lib.axw_assessment_new(sheet[0], assessment))
ok(lib.axw_assessment_find(assessment[0], "front.frequency", finding))
ok(lib.axw_assessment_answer(assessment[0], finding[0], nil, nil, nil, nil, margin, nil, nil))
check(math.abs(margin[0] - 0.069) < 5e-4, "margin " .. margin[0])
lib.axw_assessment_free(assessment[0])
lib.axw_sheet_free(sheet[0])
-- All functions at run time.
local names, count = {}, tonumber(lib.axw_function_count())
for place = 0, count - 1 do
    names[ffi.string(lib.axw_function_name(place))] = true
end
check(names["spring.wheel_rate"] and lib.axw_function_name(count) == nil, "the names of the functions")
local told = ffi.new("char[8192]")
ok(lib.axw_function_describe("spring.wheel_rate", told, 8192, nil))
check(ffi.string(told):find('"motion_ratio"', 1, true), "the description of a function")
print(passed .. " passed, " .. failed .. " failed")
return failed == 0
