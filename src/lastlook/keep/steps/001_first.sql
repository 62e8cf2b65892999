-- The first shape of the shelf. A scrap is the bytes of one file, kept once however many revisions hold it.
-- Nothing here is ever altered or taken away: undo and redo add a row to `stand`.

CREATE TABLE scrap (
    hash TEXT PRIMARY KEY,
    data BLOB NOT NULL
) STRICT;

CREATE TABLE outfit (
    id INTEGER PRIMARY KEY,
    name TEXT NOT NULL,
    folder TEXT UNIQUE,
    since TEXT NOT NULL
) STRICT;

CREATE TABLE revision (
    id INTEGER PRIMARY KEY,
    outfit INTEGER NOT NULL REFERENCES outfit,
    parent INTEGER REFERENCES revision,
    said TEXT NOT NULL,
    kept TEXT NOT NULL
) STRICT;

CREATE TABLE holds (
    revision INTEGER NOT NULL REFERENCES revision,
    name TEXT NOT NULL,
    scrap TEXT NOT NULL REFERENCES scrap,
    PRIMARY KEY (revision, name)
) STRICT, WITHOUT ROWID;

CREATE TABLE stand (
    id INTEGER PRIMARY KEY,
    outfit INTEGER NOT NULL REFERENCES outfit,
    revision INTEGER NOT NULL REFERENCES revision,
    moved TEXT NOT NULL
) STRICT;

-- Which revision the outfit's folder was last brought up to.
CREATE TABLE wrote (
    id INTEGER PRIMARY KEY,
    outfit INTEGER NOT NULL REFERENCES outfit,
    revision INTEGER NOT NULL REFERENCES revision
) STRICT;

CREATE INDEX revision_by_parent ON revision (outfit, parent);
CREATE INDEX stand_by_outfit ON stand (outfit, id);

CREATE TRIGGER scrap_stays BEFORE UPDATE ON scrap BEGIN SELECT RAISE(ABORT, 'scraps stay'); END;
CREATE TRIGGER scrap_is_kept BEFORE DELETE ON scrap BEGIN SELECT RAISE(ABORT, 'scraps are kept'); END;
CREATE TRIGGER revision_stays BEFORE UPDATE ON revision BEGIN SELECT RAISE(ABORT, 'revisions stay'); END;
CREATE TRIGGER revision_is_kept BEFORE DELETE ON revision BEGIN SELECT RAISE(ABORT, 'revisions are kept'); END;
CREATE TRIGGER holds_stays BEFORE UPDATE ON holds BEGIN SELECT RAISE(ABORT, 'revisions stay'); END;
CREATE TRIGGER holds_is_kept BEFORE DELETE ON holds BEGIN SELECT RAISE(ABORT, 'revisions are kept'); END;
CREATE TRIGGER stand_stays BEFORE UPDATE ON stand BEGIN SELECT RAISE(ABORT, 'moves stay'); END;
CREATE TRIGGER stand_is_kept BEFORE DELETE ON stand BEGIN SELECT RAISE(ABORT, 'moves are kept'); END;
