"""Serves the script beside it.

    vulnerabilities.py index REPORTS DB   makes the database govulncheck reads
                                          of a folder of reports (go.dev/doc/security/vuln/database)
    vulnerabilities.py judge FOUND.json   fails if the code reaches a vulnerable function"""

import json
import sys
from pathlib import Path


def index(reports, db):
    db = Path(db)
    (db / "ID").mkdir(parents=True)
    (db / "index").mkdir()
    modules, vulns = {}, []
    for file in sorted(Path(reports).glob("*.json")):
        text = file.read_text()
        (db / "ID" / file.name).write_text(text)
        report = json.loads(text)
        brief = {"id": report["id"], "modified": report["modified"]}
        vulns.append(brief | {"aliases": report.get("aliases", [])})
        for affected in report["affected"]:
            fixed = [e["fixed"] for r in affected.get("ranges", []) for e in r["events"] if "fixed" in e]
            modules.setdefault(affected["package"]["name"], {})[report["id"]] = brief | ({"fixed": fixed[-1]} if fixed else {})
    modules = [{"path": path, "vulns": list(m.values())} for path, m in sorted(modules.items())]
    for name, value in {"db": {"modified": max(v["modified"] for v in vulns)}, "modules": modules, "vulns": vulns}.items():
        (db / "index" / f"{name}.json").write_text(json.dumps(value))
    print(f"{len(vulns)} reports, the last {max(v['id'] for v in vulns)}")


def judge(found):
    reached = {}
    text, at, decoder = Path(found).read_text(), 0, json.JSONDecoder()
    while at < len(text.rstrip()):
        message, at = decoder.raw_decode(text, at + len(text[at:]) - len(text[at:].lstrip()))
        finding = message.get("finding")
        if finding and "function" in finding["trace"][0]:
            reached[finding["osv"]] = finding
    for osv, finding in sorted(reached.items()):
        where = finding["trace"][0]
        print(f"  {osv} {where['module']} {where['version']} in {where['package']}, mended in {finding.get('fixed_version', 'none')}")
    ours = [f for f in reached.values() if f["trace"][0]["module"] != "stdlib"]
    print(f"reached: {len(ours)} outside the standard library, {len(reached) - len(ours)} in it"
          + (": name a newer toolchain in go.mod" if len(reached) > len(ours) else ""))
    return len(reached)


if __name__ == "__main__":
    sys.exit(bool({"index": index, "judge": judge}[sys.argv[1]](*sys.argv[2:])))
