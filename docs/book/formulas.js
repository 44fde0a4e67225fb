// Sets formulas for formulas.py: a request on standard input, the results in the same order on standard output.
const { readFileSync } = require("fs");

const { katex, options, formulas } = JSON.parse(readFileSync(0, "utf8"));
const { renderToString } = require(katex);

function set([latex, displayMode]) {
    try {
        return { html: renderToString(latex, { ...options, displayMode }) };
    } catch (error) {
        return { error: error.message };
    }
}

process.stdout.write(JSON.stringify(formulas.map(set)));
