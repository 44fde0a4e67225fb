"""Checks the built book.

Every link within the book leads to an existing place. No page loads anything from the network. Every function and model of the catalogue has its
page, and its row in the table of measured errors.
"""

import json
import re
import sys
from html.parser import HTMLParser
from pathlib import Path
from urllib.parse import unquote, urlsplit

LINKS = {"href", "src", "srcset", "data", "poster", "action", "xlink:href"}


class Page(HTMLParser):
    def __init__(self, text: str) -> None:
        super().__init__()
        self.links: list[str] = []
        self.names: set[str] = set()
        self.feed(text)

    def handle_starttag(self, tag: str, attributes: list[tuple[str, str | None]]) -> None:
        for name, value in attributes:
            if value and name in LINKS:
                self.links.append(value)
            if value and name in ("id", "name"):
                self.names.add(value)
            if value and name == "style":
                self.links += re.findall(r"url\(['\"]?(.*?)['\"]?\)", value)


def missing(book: Path, catalogue: Path) -> list[str]:
    """Pages and rows that the book lacks for entries of the catalogue."""
    known = json.loads(catalogue.read_text(encoding="utf-8"))
    names = [f"{of['system']}.{of['name']}" for of in known["functions"] + known["models"]]
    trust = (book / "trust.html").read_text(encoding="utf-8")
    wrong = [f"systems/{system['name']}.html is missing" for system in known["systems"] if not (book / f"systems/{system['name']}.html").exists()]
    wrong += [f"reference/{name}.html is missing" for name in names if not (book / f"reference/{name}.html").exists()]
    wrong += [f"{name} is not in trust.html" for name in names if f">{name}<" not in trust]
    return wrong if names else ["the catalogue is empty"]


def main(book: Path, catalogue: Path) -> int:
    pages = {path: Page(path.read_text(encoding="utf-8")) for path in sorted(book.rglob("*.html"))}
    wrong, count = missing(book, catalogue), 0
    for path, page in pages.items():
        for link in page.links:
            parts = urlsplit(link)
            count += 1
            if parts.scheme == "data":
                continue
            if parts.scheme or parts.netloc:
                wrong.append(f"{path}: {link} is on the network")
                continue
            to = (path.parent / unquote(parts.path)).resolve() if parts.path else path
            if not to.exists():
                wrong.append(f"{path}: {link} is not there")
            elif parts.fragment and to in pages and unquote(parts.fragment) not in pages[to].names:
                wrong.append(f"{path}: {link} has no such place")
    for path in sorted(book.rglob("*.css")):
        text = re.sub(r"/\*.*?\*/", "", path.read_text(encoding="utf-8"), flags=re.DOTALL)
        for link in re.findall(r"url\(['\"]?(.*?)['\"]?\)", text):
            count += 1
            if re.match(r"(https?:)?//", link):
                wrong.append(f"{path}: {link} is on the network")
            elif not link.startswith(("data:", "#")) and not (path.parent / link.split("?")[0].split("#")[0]).exists():
                wrong.append(f"{path}: {link} is not there")
    print(f"{count} links of {len(pages)} pages", *wrong, sep="\n")
    return 1 if wrong or not count else 0


if __name__ == "__main__":
    sys.exit(main(Path(sys.argv[1]).resolve(), Path(sys.argv[2])))
