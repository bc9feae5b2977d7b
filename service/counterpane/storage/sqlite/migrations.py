"""The form of the file, step by step. A step that stands is never edited; a change is another step at the end."""

from __future__ import annotations

from uuid import uuid4

from sqlite_utils import Database
from sqlite_utils.migrations import Migrations

from counterpane.library.keeping.record import new_secret

steps = Migrations("counterpane")


@steps(name="0001_entries")
def _entries(db: Database) -> None:
    db.table("object").create({"sha256": str, "content": bytes}, pk="sha256", not_null={"content"})
    db.table("item").create(
        {
            "id": int,
            "shelf": str,
            "slug": str,
            "kind": str,
            "sha256": str,
            "number": int,
            "body": bytes,
            "card": bytes,
            "title": str,
            "words": str,
            "at": str,
            "status": str,
            "reversible": str,
        },
        pk="id",
        not_null={"shelf", "slug", "kind", "sha256", "number", "body", "card", "title", "words", "at", "status"},
    )
    db.table("item").create_index(["shelf", "slug"], unique=True)
    db.table("item").create_index(["shelf", "kind", "slug"])
    db.table("revision").create(
        {"item": int, "number": int, "sha256": str, "body": bytes, "at": str, "by": str, "status": str},
        pk=("item", "number"),
        foreign_keys=[("item", "item", "id"), ("sha256", "object", "sha256")],
        not_null={"sha256", "body", "at", "by", "status"},
    )
    db.table("change").create(
        {"seq": int, "at": str, "kind": str, "slug": str, "sha256": str, "event": str},
        pk="seq",
        not_null={"at", "kind", "slug", "event"},
    )
    db.table("token").create(
        {"sha256": str, "role": str, "name": str, "at": str}, pk="sha256", not_null={"role", "name", "at"}
    )


@steps(name="0002_search")
def _search(db: Database) -> None:
    db.table("item").enable_fts(["title", "words"], tokenize="porter unicode61", create_triggers=True)


@steps(name="0003_counts")
def _counts(db: Database) -> None:
    """Keep the classes of counts, and which moduli each kind has, so that a question probes the index once for each."""
    for statement in _COUNTS:
        db.execute(statement)


_COUNTS = (
    """CREATE TABLE class (
        item INTEGER NOT NULL REFERENCES item(id), kind TEXT NOT NULL, modulus INTEGER NOT NULL,
        residue INTEGER NOT NULL, least INTEGER NOT NULL, most INTEGER)""",
    "CREATE INDEX class_by_count ON class(kind, modulus, residue, least, item, most)",
    "CREATE INDEX class_by_item ON class(item, modulus, least, residue, most)",
    """CREATE TABLE modulus (kind TEXT NOT NULL, modulus INTEGER NOT NULL, classes INTEGER NOT NULL,
        PRIMARY KEY (kind, modulus)) WITHOUT ROWID""",
    """CREATE TRIGGER class_added AFTER INSERT ON class BEGIN
        INSERT INTO modulus VALUES (new.kind, new.modulus, 1)
        ON CONFLICT (kind, modulus) DO UPDATE SET classes = classes + 1; END""",
    """CREATE TRIGGER class_removed AFTER DELETE ON class BEGIN
        UPDATE modulus SET classes = classes - 1 WHERE kind = old.kind AND modulus = old.modulus;
        DELETE FROM modulus WHERE kind = old.kind AND modulus = old.modulus AND classes = 0; END""",
)


@steps(name="0004_textures")
def _textures(db: Database) -> None:
    """Keep the textures of components, so that the same one is found by its key."""
    for statement in _TEXTURES:
        db.execute(statement)


_TEXTURES = (
    """CREATE TABLE texture (
        item INTEGER NOT NULL REFERENCES item(id), version INTEGER NOT NULL, key TEXT NOT NULL, looks TEXT NOT NULL,
        PRIMARY KEY (item, version)) WITHOUT ROWID""",
    "CREATE INDEX texture_by_key ON texture(key, item)",
)


@steps(name="0005_openings")
def _openings(db: Database) -> None:
    """Keep the largest opening that was measured of a component, so that parts under a limit are found by it."""
    db.execute(
        "CREATE TABLE opening (item INTEGER PRIMARY KEY REFERENCES item(id), um INTEGER NOT NULL CHECK (um >= 0))"
    )
    db.execute("CREATE INDEX opening_by_size ON opening(um, item)")


@steps(name="0006_done")
def _done(db: Database) -> None:
    """Keep what was written under the key of a request, so that the same request sent again writes nothing."""
    db.execute(
        """CREATE TABLE done (
            key TEXT PRIMARY KEY, sent TEXT NOT NULL, shelf TEXT NOT NULL, slug TEXT NOT NULL, sha256 TEXT NOT NULL,
            at TEXT NOT NULL) WITHOUT ROWID"""
    )
    db.execute("CREATE INDEX done_by_age ON done(at)")


@steps(name="0007_record")
def _record(db: Database) -> None:
    """Keep where revisions stand, people apart from what they did, and a log that is only ever added to."""
    for statement in _RECORD:
        db.execute(statement)


_RECORD = (
    "CREATE TABLE person (key TEXT PRIMARY KEY, name TEXT UNIQUE) WITHOUT ROWID",
    """INSERT INTO person SELECT lower(hex(randomblob(8))), name FROM (
        SELECT "by" AS name FROM revision UNION SELECT name FROM token)""",
    'UPDATE revision SET "by" = (SELECT key FROM person WHERE name = revision."by")',
    "CREATE INDEX revision_by_hash ON revision(sha256)",
    "ALTER TABLE token RENAME COLUMN name TO person",
    "UPDATE token SET person = (SELECT key FROM person WHERE name = token.person)",
    "ALTER TABLE token ADD COLUMN until TEXT",
    """CREATE TABLE standing (
        id INTEGER PRIMARY KEY, shelf TEXT NOT NULL, slug TEXT NOT NULL, sha256 TEXT NOT NULL, before TEXT NOT NULL,
        status TEXT NOT NULL, at TEXT NOT NULL, "by" TEXT NOT NULL, because TEXT NOT NULL, said TEXT NOT NULL,
        replacement TEXT, until TEXT, owner TEXT)""",
    "CREATE INDEX standing_by_slug ON standing(shelf, slug, sha256, id)",
    "CREATE INDEX standing_withdrawn ON standing(sha256) WHERE status = 'withdrawn'",
    """CREATE TABLE audit (
        seq INTEGER PRIMARY KEY, at TEXT NOT NULL, "by" TEXT NOT NULL, act TEXT NOT NULL, subject TEXT NOT NULL,
        detail TEXT NOT NULL, previous TEXT NOT NULL, sha256 TEXT NOT NULL)""",
    "CREATE TRIGGER audit_stands BEFORE UPDATE ON audit BEGIN SELECT RAISE(ABORT, 'a line of the log stands'); END",
    "CREATE TRIGGER audit_stays BEFORE DELETE ON audit BEGIN SELECT RAISE(ABORT, 'a line of the log stays'); END",
)


@steps(name="0008_matters")
def _matters(db: Database) -> None:
    """Keep what waits for somebody; of a slug one submission is open at most."""
    for statement in _MATTERS:
        db.execute(statement)


_MATTERS = (
    """CREATE TABLE matter (
        number INTEGER PRIMARY KEY, lane TEXT NOT NULL, shelf TEXT NOT NULL, slug TEXT NOT NULL, sha256 TEXT NOT NULL,
        at TEXT NOT NULL, "by" TEXT NOT NULL, turn TEXT NOT NULL, since TEXT NOT NULL, body BLOB NOT NULL,
        version INTEGER NOT NULL, place INTEGER NOT NULL)""",
    "CREATE INDEX matter_by_place ON matter(place, since, number)",
    "CREATE INDEX matter_by_slug ON matter(slug, place, since, number)",
    "CREATE UNIQUE INDEX matter_open ON matter(shelf, slug) WHERE lane = 'review' AND turn != 'nobody'",
    """CREATE TABLE decision (
        id INTEGER PRIMARY KEY, matter INTEGER NOT NULL REFERENCES matter(number), at TEXT NOT NULL, "by" TEXT NOT NULL,
        decision TEXT NOT NULL, because TEXT NOT NULL, said TEXT NOT NULL)""",
    "CREATE INDEX decision_by_matter ON decision(matter, id)",
)


@steps(name="0009_peers")
def _peers(db: Database) -> None:
    """Keep how far each peer's history was read, and what of it is kept apart."""
    db.execute("CREATE TABLE peer (peer TEXT PRIMARY KEY, seq INTEGER NOT NULL, last TEXT NOT NULL) WITHOUT ROWID")
    db.execute(
        """CREATE TABLE apart (
            peer TEXT NOT NULL, shelf TEXT NOT NULL, slug TEXT NOT NULL, sha256 TEXT NOT NULL, at TEXT NOT NULL,
            why TEXT NOT NULL, PRIMARY KEY (peer, shelf, slug, sha256)) WITHOUT ROWID"""
    )
    db.execute("CREATE INDEX apart_by_slug ON apart(shelf, slug)")


@steps(name="0010_jottings")
def _jottings(db: Database) -> None:
    """Keep what those who knit from a pattern note of it."""
    db.execute(
        """CREATE TABLE jotting (
            number INTEGER PRIMARY KEY, sort TEXT NOT NULL, recipe TEXT NOT NULL, revision TEXT NOT NULL,
            at TEXT NOT NULL, "by" TEXT NOT NULL, whose TEXT NOT NULL, changed TEXT NOT NULL, sha256 TEXT NOT NULL,
            body BLOB NOT NULL, taken_back TEXT)"""
    )
    db.execute("CREATE INDEX jotting_by_recipe ON jotting(recipe, sort, number) WHERE taken_back IS NULL")


@steps(name="0011_done_number")
def _done_number(db: Database) -> None:
    """Keep the number of a submission or report that was written under the key of a request."""
    db.execute("ALTER TABLE done ADD COLUMN number INTEGER NOT NULL DEFAULT 0")


@steps(name="0012_traits")
def _traits(db: Database) -> None:
    """Keep by what components are searched and counted, and note those whose traits must still be worked out.

    A count that is asked of every kind has moduli and an index of its own.
    """
    for statement in _TRAITS:
        db.execute(statement)


_TRAITS = (
    """CREATE TABLE trait (
        item INTEGER NOT NULL REFERENCES item(id), name TEXT NOT NULL, word TEXT NOT NULL, number INTEGER,
        PRIMARY KEY (item, name, word)) WITHOUT ROWID""",
    "CREATE TABLE traitless (item INTEGER PRIMARY KEY REFERENCES item(id))",
    "INSERT INTO traitless SELECT id FROM item WHERE shelf = 'component'",
    "CREATE INDEX class_of_all ON class(modulus, residue, least, item, most)",
    "CREATE TABLE any_modulus (modulus INTEGER PRIMARY KEY, classes INTEGER NOT NULL)",
    "INSERT INTO any_modulus SELECT modulus, SUM(classes) FROM modulus GROUP BY modulus",
    """CREATE TRIGGER class_added_to_all AFTER INSERT ON class BEGIN
        INSERT INTO any_modulus VALUES (new.modulus, 1)
        ON CONFLICT (modulus) DO UPDATE SET classes = classes + 1; END""",
    """CREATE TRIGGER class_removed_from_all AFTER DELETE ON class BEGIN
        UPDATE any_modulus SET classes = classes - 1 WHERE modulus = old.modulus;
        DELETE FROM any_modulus WHERE modulus = old.modulus AND classes = 0; END""",
)


@steps(name="0013_library")
def _library(db: Database) -> None:
    """Keep the name by which a library is told from every other; one that has a history gets it here."""
    db.execute("CREATE TABLE library (identity TEXT PRIMARY KEY) WITHOUT ROWID")
    db.execute("INSERT INTO library SELECT lower(hex(randomblob(16))) WHERE EXISTS (SELECT 1 FROM change)")


@steps(name="0014_secret")
def _secret(db: Database) -> None:
    """Make the secret of this file, by which it knows the cursors that it gave."""
    db.execute("CREATE TABLE secret (key BLOB NOT NULL)")
    db.execute("INSERT INTO secret VALUES (?)", [new_secret()])


@steps(name="0015_identity")
def _identity(db: Database) -> None:
    """Name a library in which nothing is written yet; one that was restored without a name stays without."""
    nothing = "NOT EXISTS (SELECT 1 FROM change) AND NOT EXISTS (SELECT 1 FROM library)"
    db.execute(f"INSERT INTO library SELECT ? WHERE {nothing}", [uuid4().hex])
