"""Reads DXF files with ezdxf, which this project did not write, and prints what they hold as JSON."""
import json
import sys

import ezdxf
from ezdxf.lldxf.encoding import decode_dxf_unicode
from ezdxf.tools.text import plain_text

found = {}
for path in sys.argv[1:]:
    doc = ezdxf.readfile(path)
    audit = doc.audit()
    lines, words = [], []
    for e in doc.modelspace():
        if e.dxftype() == "POLYLINE":
            points = [[v.dxf.location.x, v.dxf.location.y] for v in e.vertices]
            lines.append({"layer": e.dxf.layer, "closed": bool(e.is_closed), "points": points})
        elif e.dxftype() == "TEXT":
            words.append({"layer": e.dxf.layer, "text": plain_text(decode_dxf_unicode(e.dxf.text)), "x": e.dxf.insert.x, "y": e.dxf.insert.y,
                          "height": e.dxf.height, "turn": e.dxf.rotation})
        else:
            sys.exit(f"{path}: a {e.dxftype()}")
    found[path] = {
        "version": doc.dxfversion,
        "layers": sorted(l.dxf.name for l in doc.layers),
        "errors": [e.message for e in audit.errors + audit.fixes],
        "extents": [list(doc.header["$EXTMIN"])[:2], list(doc.header["$EXTMAX"])[:2]],
        "lines": lines,
        "words": words,
    }
json.dump(found, sys.stdout)
