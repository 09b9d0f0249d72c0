"""Reads every DXF and SVG drawing and every zip of a folder with libraries of the world, and prints what it finds as JSON."""

import json
import math
import pathlib
import sys
import xml.etree.ElementTree
import zipfile

import ezdxf
from ezdxf import bbox, path


def area_within(vertices):
    """Of a closed polyline with bulges, exactly: its corners' cross products, and the segment of the circle beyond each chord.

    The library's flattened path would not do: it takes arcs for cubic curves, which lie outside of a large circle.
    Clockwise is negative.
    """
    area = 0
    for (x, y, bulge), (next_x, next_y, _) in zip(vertices, vertices[1:] + vertices[:1]):
        area += (x * next_y - next_x * y) / 2
        if bulge != 0:
            radius = math.hypot(next_x - x, next_y - y) * (1 + bulge * bulge) / (4 * abs(bulge))
            turn = 4 * math.atan(bulge)
            area += radius * radius * (turn - math.sin(turn)) / 2
    return area


def read_drawing(file):
    """The strict reader, its audit, and each entity with the box of its flattened path."""
    document = ezdxf.readfile(file)
    entities = []
    for entity in document.modelspace():
        found = {"type": entity.dxftype(), "layer": entity.dxf.layer}
        if entity.dxftype() == "LWPOLYLINE":
            found["closed"] = bool(entity.closed)
            found["vertices"] = len(entity)
            found["arcs"] = sum(1 for vertex in entity if vertex[4] != 0)
        # 0.0001 of either unit is less than the files promise.
        points = list(path.make_path(entity).flattening(0.0001))
        xs, ys = [point.x for point in points], [point.y for point in points]
        if entity.dxftype() == "LWPOLYLINE":
            found["area"] = area_within(list(entity.get_points("xyb")))
        found["box"] = [min(xs), min(ys), max(xs), max(ys)]
        entities.append(found)
    header = document.header
    return {
        "version": document.dxfversion,
        "errors": [error.message for error in document.audit().errors],
        "units": header["$INSUNITS"],
        "measurement": header["$MEASUREMENT"],
        "limits": [*header["$LIMMIN"][:2], *header["$LIMMAX"][:2]],
        "layers": {layer.dxf.name: layer.dxf.linetype for layer in document.layers},
        "entities": entities,
    }


def read_xml(file):
    """The size of a drawing, its groups and how many paths each has; what is no XML is refused by the parser."""
    space = "{http://www.w3.org/2000/svg}"
    root = xml.etree.ElementTree.parse(file).getroot()
    groups = {group.get("id"): [child.tag.replace(space, "") for child in group] for group in root.iter(space + "g")}
    return {"tag": root.tag, "width": root.get("width"), "title": root.findtext(space + "title"), "groups": groups}


def read_zip(file):
    """Names, dates and texts; `broken` is the first file whose check sum is wrong."""
    with zipfile.ZipFile(file) as archive:
        return {
            "broken": archive.testzip(),
            "dates": sorted({"%d-%02d-%02d %02d:%02d" % info.date_time[:5] for info in archive.infolist()}),
            "texts": {name: archive.read(name).decode("utf8") for name in archive.namelist()},
        }


folder = pathlib.Path(sys.argv[1])
print(
    json.dumps(
        {
            "drawings": {file.name: read_drawing(str(file)) for file in sorted(folder.glob("*.dxf"))},
            "svgs": {file.name: read_xml(file) for file in sorted(folder.glob("*.svg"))},
            "zips": {file.name: read_zip(file) for file in sorted(folder.glob("*.zip"))},
        }
    )
)
