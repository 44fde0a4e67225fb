#!/bin/sh
# The estimating program on its quote and its build sheet, and on those with a fault: estimate.sh PROGRAM QUOTE SHEETS OUT_FOLDER
set -u
program=$1 quote=$2 sheet=$3/dunlin.toml prices=$3/tern_lane_prices.csv out=$4
mkdir -p "$out"
passed=0 failed=0

count() { # HOLDS WHAT
    if [ "$1" = yes ]; then
        passed=$((passed + 1))
    else
        failed=$((failed + 1))
        echo "estimate: $2"
        cat "$out/said.txt" "$out/complaint.txt"
    fi
}

# run CODE ARGUMENT...: the program ends with this code.
run() {
    code=$1
    shift
    "$program" "$@" >"$out/said.txt" 2>"$out/complaint.txt"
    found=$?
    [ $found -eq "$code" ] && count yes || count no "ended with $found, not $code"
}

says() { # FILE WORDS
    grep -q -F -e "$2" "$out/$1.txt" && count yes || count no "does not say: $2"
}

# faulty SED_SCRIPT WORDS: the quote, changed, is refused with these words, the line among them, and nothing is estimated.
faulty() {
    sed "$1" "$quote" >"$out/faulty.csv"
    cmp -s "$quote" "$out/faulty.csv" && count no "changed nothing: $1"
    line=$(diff "$quote" "$out/faulty.csv" | sed -n 's/^\([0-9]*\)[acd,].*/\1/p' | head -n 1)
    run 2 "$out/faulty.csv"
    says complaint "$2"
    [ $# -eq 3 ] || says complaint "faulty.csv:$line: "
    [ ! -s "$out/said.txt" ] && count yes || count no "an estimate in spite of: $2"
}

run 1 "$quote"
for words in 'gearbox          360 N·m            400 N·m continuous    1.111           tight ' \
    'rear axle        6460 N·m           5200 N·m peak         0.805           short ' \
    'front spring     0.9214 Hz          1.1 Hz to 1.5 Hz      0.1786 Hz below short ' \
    'coolant cap      110 °C             boils at 126.1 °C     15.27 delta K   tight ' \
    'engine           2424 rpm at 65 mph at most 2400 rpm      24.48 rpm above short ' \
    'propeller shaft: the rating is not a continuous one, and no shock_factor is given' \
    'radiator: nothing here checks this part' 'local codes and licensed practice'; do
    says said "$words"
done
total=$(sed -n 's/^total price *//p' "$out/said.txt")
sum=$(awk 'NF > 1 && /\.[0-9][0-9]$/ && !/^total/ { cents += int($NF * 100 + 0.5) } END { printf "%.2f", cents / 100 }' "$out/said.txt")
[ -n "$total" ] && [ "$total" = "$sum" ] && count yes || count no "total $total, sum of the parts $sum"

run 0 --bits "$quote"
[ "$(grep -c -E '^[a-z]+\.[a-z_]+ [0-9a-f]{16}$' "$out/said.txt")" = 11 ] && [ "$(wc -l <"$out/said.txt")" = 11 ] && count yes || count no "not 11 answers"

# With a shock factor every part of the driveline is known.
sed 's/^driveline,wanted,1.25/&\ndriveline,shock_factor,2/' "$quote" >"$out/shock.csv"
run 1 "$out/shock.csv"
says said 'rear axle        17230 N·m          5200 N·m peak         0.3019          short '
says said 'half shaft       17230 N·m          3600 N·m yield        0.209           short '

# Slower, and the engine is below its limit by so much; a fast spring is above its band.
sed 's/^vehicle,cruise,65 mph/vehicle,cruise,60 mph/' "$quote" >"$out/slow.csv"
run 1 "$out/slow.csv"
says said 'engine           2238 rpm at 60 mph at most 2400 rpm      162 rpm below   meets '
sed 's/^front spring,rate,300 lbf.in/front spring,rate,900 lbf\/in/' "$quote" >"$out/fast.csv"
run 1 "$out/fast.csv"
says said '0.09594 Hz above short '

faulty 's/300 lbf\/in/300 lbf\/inn/' '300 lbf/inn'
faulty 's/15 psi gauge/15 psi/' 'gauge'
faulty 's/2650 mm/2,65 m/' '2,65 m'
faulty 's/612 kg/-612 kg/' 'left_front = -612 kg'
faulty 's/^gearbox,efficiency,97 %/gearbox,effciency,97 %/' 'nothing here reads `effciency` of `gearbox`'
faulty 's/^gearbox,efficiency,97 %/gearbox,efficiency,197 %/' 'efficiency = 1.97 is outside its range; valid: 0.7 <= efficiency <= 1' elsewhere
says complaint "faulty.csv:$(grep -n '^gearbox' "$quote" | head -n 1 | cut -d: -f1): "
faulty 's/^gearbox,kind,continuous/gearbox,kind,continous/' 'continous' elsewhere
faulty 's/^rear axle,ratio,4.10/rear axle,ratio,4.10\nrear axle,ratio,3.90/' 'stands on line' elsewhere
faulty 's/^tyre,marking,225/tyre,marking,25/' 'section width 25 mm is outside'
faulty 's/^tyre,price,128.00/tyre,price,128/' 'a price is written with two decimals'
faulty 's/^tyre,count,4/tyre,count,four/' 'a count is a whole number'
faulty 's/^engine,torque_at,1600 rpm: 360/engine,torque_at,1600 rpm; 360/' 'a point of the torque curve'
faulty 's/^part,property,printed$/part;property;printed/' 'the first line is'
faulty 's/^front spring,frequency_to,1.5 Hz/front spring,frequency_to,1.0 Hz/' 'high = 1 must be greater than low = 1.1' elsewhere
faulty '/^coolant cap,opens_at/d' 'the quote does not say `opens_at` of `coolant cap`' elsewhere
faulty "s/^tyre,rating,.*/&$(printf '%0400d' 0)/" 'the line is too long'

run 2
says complaint 'usage: '
run 2 "$out/not-there.csv"
says complaint 'cannot be opened'
run 2 --bits
: >"$out/empty.csv"
run 2 "$out/empty.csv"
says complaint 'the quote is empty'

# The build sheet, and parts that go together.
frequency='1.2 Hz <= front.natural_frequency <= 1.5 Hz' cruise='driveline.cruise.verdict = tight'
bind='front.coil_bind.verdict = meets' strength='final_drive.strength.margin >= 1.1' cost='cost <= 1500'
run 1 "$sheet" "$prices" "$frequency" "$cruise" "$bind" "$strength" "$cost"
for words in 'gearbox.strength           360 N·m          1.111          write more     tight' \
    'driveline.cruise           2683 rpm         -82.57 rpm     0 rpm          short' \
    'rear.spring_strength: needs rear.spring.wire_diameter' 'Caution: Hot pressurised coolant scalds' \
    '17 in all, so that:' "  $frequency" 'The cheapest: 1245.50 for parts of 99.99 kg' \
    'The lightest: 1470.50 for parts of 90.39 kg' '  final drive      gear set 3.73' \
    "coil pair F-450: front.natural_frequency = 1.143 Hz; required: $frequency" \
    "gear set 3.73 wide face: the cheapest combination with it costs 1505.5; required: $cost" \
    '2683 rpm, 82.6 rpm above 2600 rpm' 'local codes and licensed practice'; do
    says said "$words"
done
# What the parts of the cheapest choice cost in the list is what it costs.
sum=$(sed -n '/^The cheapest/,/^$/s/^  [a-z ]\{17\}//p' "$out/said.txt" | while read -r part; do grep "^$part," "$prices"; done | awk -F, '{ sum += $3 } END { printf "%.2f %d", sum, NR }')
[ "$sum" = '1245.50 5' ] && count yes || count no "the parts cost $sum"

run 1 "$sheet" "$prices" 'cost <= 100'
says said 'No parts of this list do that together.'

# fault FILE SED_SCRIPT WORDS: sheet or list, changed, is refused with these words, file and line among them.
fault() {
    sed "$2" "$1" >"$out/faulty.txt"
    cmp -s "$1" "$out/faulty.txt" && count no "changed nothing: $2"
    if [ "$1" = "$sheet" ]; then run 2 "$out/faulty.txt" "$prices" "$cost"; else run 2 "$sheet" "$out/faulty.txt" "$cost"; fi
    says complaint "faulty.txt: line $(diff "$1" "$out/faulty.txt" | sed -n 's/^\([0-9]*\)[acd,].*/\1/p' | head -n 1), column "
    says complaint ": $3"
    [ ! -s "$out/said.txt" ] && count yes || count no "findings in spite of: $3"
}
fault "$sheet" 's/^mass_rating = "1350 kg"/mass_rating = "1350 kgg"/' 'front.mass_rating: '
fault "$sheet" 's/^solid_length = "165 mm"/solid_lenth = "165 mm"/' 'front.spring.solid_lenth: there is no key `solid_lenth`; did you mean `solid_length`?'
fault "$prices" 's/,465.00,/,465 quid,/' 'cost: `465 quid` is no cost'
fault "$prices" 's/15.2 psi gauge/15.2 psi/' 'cap.opening_pressure: '
run 2 "$sheet" "$prices" 'front.natural_frequency <= 2 kg'
says complaint '2 kg'
run 2 "$sheet" "$out/not-there.csv" "$cost"
says complaint 'not-there.csv cannot be opened'
run 2 --bits "$sheet" "$prices"
says complaint 'usage: '

echo "$passed passed, $failed failed"
[ $failed -eq 0 ]
