#!/usr/bin/env python3
"""Validates the plan schema itself, and every sample against it, with an independent validator.

Usage: schema_check.py SOURCE_FOLDER. Exit status 77 (skipped) without python3-jsonschema.
"""

import json
import pathlib
import sys

try:
    from jsonschema import Draft202012Validator
except ImportError:
    print("skipped: python3-jsonschema is not installed")
    sys.exit(77)

# Bad files of tests/exchange/bad that a schema can see; the others need more than a schema.
MUST_BE_REFUSED = [
    "angle-too-big", "far-away", "flag-as-number", "half-chamber", "list-as-object", "missing-id",
    "missing-run-end", "missing-width", "no-format", "null-length", "number-as-text",
    "object-as-list", "other-format", "point-of-three", "point-of-texts", "text-as-number",
    "top-list", "unknown-key-far", "unknown-key-near", "unknown-service", "unknown-units",
    "version-newer", "version-text",
]


def load(path):
    return json.loads(path.read_text(encoding="utf-8"))


def main(source):
    schema = load(source / "resources/schema/plan.schema.json")
    Draft202012Validator.check_schema(schema)
    validator = Draft202012Validator(schema)
    samples = sorted((source / "samples").rglob("*.sump"))
    if not samples:
        print("no samples found")
        return 1
    faults = 0
    for sample in samples:
        for error in validator.iter_errors(load(sample)):
            place = "/" + "/".join(str(step) for step in error.absolute_path)
            print(f"{sample.name}: {place}: {error.message}")
            faults += 1
    for name in MUST_BE_REFUSED:
        if validator.is_valid(load(source / f"tests/exchange/bad/{name}.sump")):
            print(f"{name}.sump: the schema lets it pass")
            faults += 1
    print(f"{len(samples)} samples, {len(MUST_BE_REFUSED)} bad files, {faults} faults")
    return 1 if faults else 0


if __name__ == "__main__":
    sys.exit(main(pathlib.Path(sys.argv[1])))
