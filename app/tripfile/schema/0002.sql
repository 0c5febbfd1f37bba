-- What version 2 adds to the tables of version 1.

-- What tells a trip from all others, for calendars that outlive its title.
ALTER TABLE trip ADD COLUMN identity TEXT NOT NULL DEFAULT '';
UPDATE trip SET identity = lower(hex(randomblob(16)));

-- A lower price for many packages bought at once.
ALTER TABLE food_package ADD COLUMN many_from INTEGER NOT NULL DEFAULT 0;
ALTER TABLE food_package ADD COLUMN many_price_minor INTEGER;

-- What is written on a box, who sends it and when, who fetches it.
ALTER TABLE resupply_point ADD COLUMN addressee TEXT NOT NULL DEFAULT '';
ALTER TABLE resupply_point ADD COLUMN care_of TEXT NOT NULL DEFAULT '';
ALTER TABLE resupply_point ADD COLUMN collector INTEGER REFERENCES member (id) DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE resupply_point ADD COLUMN sender INTEGER REFERENCES member (id) DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE resupply_point ADD COLUMN helper TEXT NOT NULL DEFAULT '';
ALTER TABLE resupply_point ADD COLUMN send_on TEXT;

-- How boxes are sent from home. A trip of version 1 was reckoned as if posts
-- were open every day, and stays so.
CREATE TABLE posting (
  id INTEGER PRIMARY KEY CHECK (id = 1) REFERENCES trip (id) DEFERRABLE INITIALLY DEFERRED,
  return_address TEXT NOT NULL
) STRICT;
INSERT INTO posting (id, return_address) SELECT id, '' FROM trip;

CREATE TABLE posting_open_day (
  place INTEGER PRIMARY KEY,
  weekday TEXT NOT NULL
) STRICT;

CREATE TABLE posting_closed_date (
  place INTEGER PRIMARY KEY,
  date TEXT
) STRICT;

CREATE TABLE shop (
  name TEXT PRIMARY KEY,
  used INTEGER NOT NULL CHECK (used IN (0, 1)),
  resupply_point INTEGER REFERENCES resupply_point (id) DEFERRABLE INITIALLY DEFERRED,
  address TEXT NOT NULL,
  visit_fee_minor INTEGER NOT NULL,
  least_order_minor INTEGER NOT NULL,
  notes TEXT NOT NULL,
  place INTEGER NOT NULL
) STRICT, WITHOUT ROWID;

CREATE TABLE shop_open_day (
  shop TEXT NOT NULL REFERENCES shop (name) DEFERRABLE INITIALLY DEFERRED,
  place INTEGER NOT NULL,
  weekday TEXT NOT NULL,
  PRIMARY KEY (shop, place)
) STRICT, WITHOUT ROWID;

CREATE TABLE shop_closed_date (
  shop TEXT NOT NULL REFERENCES shop (name) DEFERRABLE INITIALLY DEFERRED,
  place INTEGER NOT NULL,
  date TEXT,
  PRIMARY KEY (shop, place)
) STRICT, WITHOUT ROWID;

-- How menus are filled, and how much is cooked for second helpings.
ALTER TABLE settings ADD COLUMN seconds_share REAL NOT NULL DEFAULT 0;
ALTER TABLE settings ADD COLUMN menu_aim REAL NOT NULL DEFAULT 0;
ALTER TABLE settings ADD COLUMN cook_minutes REAL NOT NULL DEFAULT 0;
ALTER TABLE settings ADD COLUMN reserve_end TEXT NOT NULL DEFAULT 'taken home';

-- Foods that are counted, not weighed out.
ALTER TABLE food ADD COLUMN piece_mg INTEGER NOT NULL DEFAULT 0;
ALTER TABLE food ADD COLUMN piece_halves INTEGER NOT NULL DEFAULT 0 CHECK (piece_halves IN (0, 1));

-- The maker's figures from which the need of cooling can be told.
ALTER TABLE food ADD COLUMN water_activity REAL;
ALTER TABLE food ADD COLUMN ph REAL;
ALTER TABLE food ADD COLUMN heat_treated INTEGER NOT NULL DEFAULT 0 CHECK (heat_treated IN (0, 1));

-- Who may join, and what happened on the way, other than planned.
ALTER TABLE member ADD COLUMN standby INTEGER NOT NULL DEFAULT 0 CHECK (standby IN (0, 1));

CREATE TABLE crew_change (
  place INTEGER PRIMARY KEY,
  member INTEGER NOT NULL REFERENCES member (id) DEFERRABLE INITIALLY DEFERRED,
  day INTEGER NOT NULL REFERENCES day (number) DEFERRABLE INITIALLY DEFERRED,
  there INTEGER NOT NULL CHECK (there IN (0, 1))
) STRICT;

CREATE TABLE replan (
  day INTEGER PRIMARY KEY REFERENCES day (number) DEFERRABLE INITIALLY DEFERRED,
  place INTEGER NOT NULL
) STRICT;

CREATE TABLE dish_move (
  replan INTEGER NOT NULL REFERENCES replan (day) DEFERRABLE INITIALLY DEFERRED,
  place INTEGER NOT NULL,
  dish TEXT NOT NULL,
  day INTEGER NOT NULL,
  meal TEXT NOT NULL,
  cook_group INTEGER REFERENCES cook_group (id) DEFERRABLE INITIALLY DEFERRED,
  PRIMARY KEY (replan, place)
) STRICT, WITHOUT ROWID;

CREATE TABLE hand_over (
  replan INTEGER NOT NULL REFERENCES replan (day) DEFERRABLE INITIALLY DEFERRED,
  place INTEGER NOT NULL,
  bag TEXT NOT NULL,
  gear INTEGER REFERENCES gear (id) DEFERRABLE INITIALLY DEFERRED,
  fuel_container TEXT NOT NULL,
  from_member INTEGER REFERENCES member (id) DEFERRABLE INITIALLY DEFERRED,
  to_member INTEGER NOT NULL REFERENCES member (id) DEFERRABLE INITIALLY DEFERRED,
  PRIMARY KEY (replan, place)
) STRICT, WITHOUT ROWID;

-- What is bagged alone.
ALTER TABLE settings ADD COLUMN store_meals INTEGER NOT NULL DEFAULT 2;
ALTER TABLE settings ADD COLUMN snack_days INTEGER NOT NULL DEFAULT 3;
ALTER TABLE settings ADD COLUMN lunch_per_eater INTEGER NOT NULL DEFAULT 0 CHECK (lunch_per_eater IN (0, 1));
ALTER TABLE settings ADD COLUMN smellables_ul INTEGER NOT NULL DEFAULT 0;

-- Food out of bags that are still there, fuel looked at on the way, bags that
-- another eats than they were packed for.
CREATE TABLE part_gone (
  bag TEXT NOT NULL,
  day INTEGER NOT NULL REFERENCES day (number) DEFERRABLE INITIALLY DEFERRED,
  end_of_food TEXT NOT NULL,
  mass_mg INTEGER NOT NULL,
  place INTEGER NOT NULL,
  PRIMARY KEY (bag, day)
) STRICT, WITHOUT ROWID;

CREATE TABLE fuel_note (
  fuel_container TEXT NOT NULL,
  day INTEGER NOT NULL REFERENCES day (number) DEFERRABLE INITIALLY DEFERRED,
  left_mg INTEGER NOT NULL,
  place INTEGER NOT NULL,
  PRIMARY KEY (fuel_container, day)
) STRICT, WITHOUT ROWID;

CREATE TABLE given_bag (
  replan INTEGER NOT NULL REFERENCES replan (day) DEFERRABLE INITIALLY DEFERRED,
  place INTEGER NOT NULL,
  bag TEXT NOT NULL,
  to_member INTEGER NOT NULL REFERENCES member (id) DEFERRABLE INITIALLY DEFERRED,
  PRIMARY KEY (replan, place)
) STRICT, WITHOUT ROWID;

-- Fuel in a pack by hand, and the packs that the plan stays near to.
ALTER TABLE pin ADD COLUMN fuel_container TEXT NOT NULL DEFAULT '';

CREATE TABLE kept_packs (
  day INTEGER PRIMARY KEY REFERENCES day (number) DEFERRABLE INITIALLY DEFERRED,
  place INTEGER NOT NULL
) STRICT;

CREATE TABLE kept_thing (
  kept_packs INTEGER NOT NULL REFERENCES kept_packs (day) DEFERRABLE INITIALLY DEFERRED,
  place INTEGER NOT NULL,
  bag TEXT NOT NULL,
  gear INTEGER REFERENCES gear (id) DEFERRABLE INITIALLY DEFERRED,
  fuel_container TEXT NOT NULL,
  from_member INTEGER REFERENCES member (id) DEFERRABLE INITIALLY DEFERRED,
  to_member INTEGER REFERENCES member (id) DEFERRABLE INITIALLY DEFERRED,
  PRIMARY KEY (kept_packs, place)
) STRICT, WITHOUT ROWID;

-- Where a bag lies after the final check of packing night.
ALTER TABLE packed_bag ADD COLUMN in_box INTEGER REFERENCES resupply_point (id) DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE packed_bag ADD COLUMN in_pack INTEGER REFERENCES member (id) DEFERRABLE INITIALLY DEFERRED;
