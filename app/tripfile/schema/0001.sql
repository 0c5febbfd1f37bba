-- Version 1 of the trip file. Masses are whole milligrams (_mg), volumes whole
-- microlitres (_ul), money whole smallest coins (_minor), dates YYYY-MM-DD.
-- NULL is "not known" or "none". References are checked when a change is
-- finished, so that changes can come in any order.

CREATE TABLE trip (
  id INTEGER PRIMARY KEY CHECK (id = 1),
  title TEXT NOT NULL,
  notes TEXT NOT NULL,
  start TEXT,
  units TEXT NOT NULL,
  currency TEXT NOT NULL
) STRICT;

CREATE TABLE settings (
  id INTEGER PRIMARY KEY CHECK (id = 1) REFERENCES trip (id) DEFERRABLE INITIALLY DEFERRED,
  walking_equation TEXT NOT NULL,
  party_factor REAL NOT NULL,
  stop_share REAL NOT NULL,
  early_appetite REAL NOT NULL,
  cold_share REAL NOT NULL,
  protein_g_per_kg REAL NOT NULL,
  breakfast_share REAL NOT NULL,
  lunch_share REAL NOT NULL,
  dinner_share_of_day REAL NOT NULL,
  snack_share REAL NOT NULL,
  day_low REAL NOT NULL,
  day_high REAL NOT NULL,
  scale_step_mg INTEGER NOT NULL,
  fill_open_slots INTEGER NOT NULL CHECK (fill_open_slots IN (0, 1)),
  repeat_gap_days INTEGER NOT NULL,
  packing_night TEXT,
  shopping_day TEXT,
  home_high_c REAL NOT NULL,
  home_low_c REAL NOT NULL,
  home_fridge INTEGER NOT NULL CHECK (home_fridge IN (0, 1)),
  car_hours REAL NOT NULL,
  car_high_c REAL NOT NULL,
  pack_sun_heat_k REAL NOT NULL,
  fuel_reserve REAL NOT NULL,
  water_start_c REAL NOT NULL,
  hot_drink_ul INTEGER NOT NULL,
  wash_up_ul INTEGER NOT NULL,
  dinner_share_of_pack REAL NOT NULL,
  fuel_share_of_pack REAL NOT NULL,
  budget_minor INTEGER,
  helpers INTEGER NOT NULL,
  reserve_days REAL NOT NULL,
  reserve_recipe INTEGER REFERENCES recipe (id) DEFERRABLE INITIALLY DEFERRED
) STRICT;

CREATE TABLE cook_group (
  id INTEGER PRIMARY KEY,
  name TEXT NOT NULL,
  place INTEGER NOT NULL
) STRICT;

CREATE TABLE member (
  id INTEGER PRIMARY KEY,
  name TEXT NOT NULL,
  cook_group INTEGER REFERENCES cook_group (id) DEFERRABLE INITIALLY DEFERRED,
  sex TEXT NOT NULL,
  age_years INTEGER NOT NULL,
  body_mass_mg INTEGER NOT NULL,
  height_m REAL NOT NULL,
  given_need_kcal REAL,
  appetite REAL NOT NULL,
  strength REAL NOT NULL,
  own_kit_mg INTEGER NOT NULL,
  pack_room_ul INTEGER NOT NULL,
  load_limit_mg INTEGER,
  first_day INTEGER NOT NULL,
  last_day INTEGER NOT NULL,
  protein_g_per_kg REAL,
  medicine TEXT NOT NULL,
  notes TEXT NOT NULL,
  place INTEGER NOT NULL
) STRICT;

CREATE TABLE member_diet (
  member INTEGER NOT NULL REFERENCES member (id) DEFERRABLE INITIALLY DEFERRED,
  place INTEGER NOT NULL,
  diet TEXT NOT NULL,
  PRIMARY KEY (member, place)
) STRICT, WITHOUT ROWID;

CREATE TABLE member_allergy (
  member INTEGER NOT NULL REFERENCES member (id) DEFERRABLE INITIALLY DEFERRED,
  place INTEGER NOT NULL,
  allergen TEXT NOT NULL,
  severe INTEGER NOT NULL CHECK (severe IN (0, 1)),
  PRIMARY KEY (member, place)
) STRICT, WITHOUT ROWID;

CREATE TABLE member_dislike (
  member INTEGER NOT NULL REFERENCES member (id) DEFERRABLE INITIALLY DEFERRED,
  place INTEGER NOT NULL,
  food INTEGER NOT NULL REFERENCES food (id) DEFERRABLE INITIALLY DEFERRED,
  PRIMARY KEY (member, place)
) STRICT, WITHOUT ROWID;

CREATE TABLE day (
  number INTEGER PRIMARY KEY,
  name TEXT NOT NULL,
  distance_m REAL NOT NULL,
  ascent_m REAL NOT NULL,
  descent_m REAL NOT NULL,
  steep_descent_m REAL NOT NULL,
  terrain TEXT NOT NULL,
  moving_hours REAL,
  camp_height_m REAL NOT NULL,
  lunch_height_m REAL NOT NULL,
  low_c REAL NOT NULL,
  high_c REAL NOT NULL,
  dry_camp INTEGER NOT NULL CHECK (dry_camp IN (0, 1)),
  snow_water INTEGER NOT NULL CHECK (snow_water IN (0, 1)),
  no_flame INTEGER NOT NULL CHECK (no_flame IN (0, 1)),
  notes TEXT NOT NULL
) STRICT;

CREATE TABLE day_meal (
  day INTEGER NOT NULL REFERENCES day (number) DEFERRABLE INITIALLY DEFERRED,
  place INTEGER NOT NULL,
  meal TEXT NOT NULL,
  PRIMARY KEY (day, place)
) STRICT, WITHOUT ROWID;

CREATE TABLE food (
  id INTEGER PRIMARY KEY,
  name TEXT NOT NULL,
  source TEXT NOT NULL,
  kcal_per_100g REAL NOT NULL,
  protein_g_per_100g REAL,
  fat_g_per_100g REAL,
  carb_g_per_100g REAL,
  fibre_g_per_100g REAL,
  sugar_g_per_100g REAL,
  sodium_mg_per_100g REAL,
  carb_convention TEXT NOT NULL,
  refuse_share REAL NOT NULL,
  bulk_g_per_ml REAL,
  form TEXT NOT NULL,
  at_home_mg INTEGER NOT NULL,
  aisle TEXT NOT NULL,
  tcs TEXT NOT NULL,
  tcs_when_open INTEGER NOT NULL CHECK (tcs_when_open IN (0, 1)),
  shelf_days_20c REAL,
  q10 REAL NOT NULL,
  max_heat_c REAL,
  softens_c REAL,
  crushable INTEGER NOT NULL CHECK (crushable IN (0, 1)),
  storage_basis TEXT NOT NULL,
  packed_as_bought INTEGER NOT NULL CHECK (packed_as_bought IN (0, 1)),
  notes TEXT NOT NULL,
  place INTEGER NOT NULL
) STRICT;

CREATE TABLE food_package (
  food INTEGER NOT NULL REFERENCES food (id) DEFERRABLE INITIALLY DEFERRED,
  place INTEGER NOT NULL,
  net_mg INTEGER NOT NULL,
  price_minor INTEGER,
  shop TEXT NOT NULL,
  in_stock INTEGER,
  wrapping_mg INTEGER NOT NULL,
  PRIMARY KEY (food, place)
) STRICT, WITHOUT ROWID;

CREATE TABLE food_allergen (
  food INTEGER NOT NULL REFERENCES food (id) DEFERRABLE INITIALLY DEFERRED,
  allergen TEXT NOT NULL,
  presence TEXT NOT NULL,
  PRIMARY KEY (food, allergen)
) STRICT, WITHOUT ROWID;

CREATE TABLE food_diet (
  food INTEGER NOT NULL REFERENCES food (id) DEFERRABLE INITIALLY DEFERRED,
  diet TEXT NOT NULL,
  suitability TEXT NOT NULL,
  PRIMARY KEY (food, diet)
) STRICT, WITHOUT ROWID;

CREATE TABLE recipe (
  id INTEGER PRIMARY KEY,
  name TEXT NOT NULL,
  water_ul INTEGER NOT NULL,
  pour_off_ul INTEGER NOT NULL,
  simmer_minutes REAL NOT NULL,
  soak_minutes REAL NOT NULL,
  pulses INTEGER NOT NULL CHECK (pulses IN (0, 1)),
  cold_ok INTEGER NOT NULL CHECK (cold_ok IN (0, 1)),
  staple TEXT NOT NULL,
  texture TEXT NOT NULL,
  min_scale REAL NOT NULL,
  max_scale REAL NOT NULL,
  notes TEXT NOT NULL,
  place INTEGER NOT NULL
) STRICT;

CREATE TABLE recipe_meal (
  recipe INTEGER NOT NULL REFERENCES recipe (id) DEFERRABLE INITIALLY DEFERRED,
  place INTEGER NOT NULL,
  meal TEXT NOT NULL,
  PRIMARY KEY (recipe, place)
) STRICT, WITHOUT ROWID;

CREATE TABLE recipe_step (
  recipe INTEGER NOT NULL REFERENCES recipe (id) DEFERRABLE INITIALLY DEFERRED,
  place INTEGER NOT NULL,
  step TEXT NOT NULL,
  PRIMARY KEY (recipe, place)
) STRICT, WITHOUT ROWID;

CREATE TABLE ingredient (
  recipe INTEGER NOT NULL REFERENCES recipe (id) DEFERRABLE INITIALLY DEFERRED,
  place INTEGER NOT NULL,
  food INTEGER NOT NULL REFERENCES food (id) DEFERRABLE INITIALLY DEFERRED,
  amount_mg INTEGER NOT NULL,
  role TEXT NOT NULL,
  vessel TEXT NOT NULL,
  PRIMARY KEY (recipe, place)
) STRICT, WITHOUT ROWID;

CREATE TABLE swap (
  recipe INTEGER NOT NULL,
  ingredient INTEGER NOT NULL,
  place INTEGER NOT NULL,
  food INTEGER REFERENCES food (id) DEFERRABLE INITIALLY DEFERRED,
  amount_mg INTEGER NOT NULL,
  for_all INTEGER NOT NULL CHECK (for_all IN (0, 1)),
  PRIMARY KEY (recipe, ingredient, place),
  FOREIGN KEY (recipe, ingredient) REFERENCES ingredient (recipe, place) DEFERRABLE INITIALLY DEFERRED
) STRICT, WITHOUT ROWID;

CREATE TABLE cell (
  day INTEGER NOT NULL REFERENCES day (number) DEFERRABLE INITIALLY DEFERRED,
  meal TEXT NOT NULL,
  cook_group INTEGER NOT NULL REFERENCES cook_group (id) DEFERRABLE INITIALLY DEFERRED,
  locked INTEGER NOT NULL CHECK (locked IN (0, 1)),
  place INTEGER NOT NULL,
  PRIMARY KEY (day, meal, cook_group)
) STRICT, WITHOUT ROWID;

CREATE TABLE dish (
  day INTEGER NOT NULL,
  meal TEXT NOT NULL,
  cook_group INTEGER NOT NULL,
  place INTEGER NOT NULL,
  recipe INTEGER NOT NULL REFERENCES recipe (id) DEFERRABLE INITIALLY DEFERRED,
  PRIMARY KEY (day, meal, cook_group, place),
  FOREIGN KEY (day, meal, cook_group) REFERENCES cell (day, meal, cook_group) DEFERRABLE INITIALLY DEFERRED
) STRICT, WITHOUT ROWID;

CREATE TABLE dish_eater (
  day INTEGER NOT NULL,
  meal TEXT NOT NULL,
  cook_group INTEGER NOT NULL,
  dish INTEGER NOT NULL,
  place INTEGER NOT NULL,
  member INTEGER NOT NULL REFERENCES member (id) DEFERRABLE INITIALLY DEFERRED,
  PRIMARY KEY (day, meal, cook_group, dish, place),
  FOREIGN KEY (day, meal, cook_group, dish) REFERENCES dish (day, meal, cook_group, place) DEFERRABLE INITIALLY DEFERRED
) STRICT, WITHOUT ROWID;

CREATE TABLE acceptance (
  day INTEGER NOT NULL,
  meal TEXT NOT NULL,
  cook_group INTEGER NOT NULL,
  dish INTEGER NOT NULL,
  place INTEGER NOT NULL,
  member INTEGER NOT NULL REFERENCES member (id) DEFERRABLE INITIALLY DEFERRED,
  food INTEGER NOT NULL REFERENCES food (id) DEFERRABLE INITIALLY DEFERRED,
  reason TEXT NOT NULL,
  PRIMARY KEY (day, meal, cook_group, dish, place),
  FOREIGN KEY (day, meal, cook_group, dish) REFERENCES dish (day, meal, cook_group, place) DEFERRABLE INITIALLY DEFERRED
) STRICT, WITHOUT ROWID;

CREATE TABLE gear (
  id INTEGER PRIMARY KEY,
  name TEXT NOT NULL,
  kind TEXT NOT NULL,
  cook_group INTEGER REFERENCES cook_group (id) DEFERRABLE INITIALLY DEFERRED,
  mass_mg INTEGER NOT NULL,
  volume_ul INTEGER NOT NULL,
  fuel TEXT NOT NULL,
  power_w REAL NOT NULL,
  efficiency REAL NOT NULL,
  capacity_ul INTEGER NOT NULL,
  heat_capacity_kj_per_kg_k REAL NOT NULL,
  place INTEGER NOT NULL
) STRICT;

CREATE TABLE fuel_container (
  place INTEGER PRIMARY KEY,
  fuel TEXT NOT NULL,
  name TEXT NOT NULL,
  net_mg INTEGER NOT NULL,
  empty_mg INTEGER NOT NULL,
  volume_ul INTEGER NOT NULL,
  price_minor INTEGER
) STRICT;

CREATE TABLE bag_type (
  place INTEGER PRIMARY KEY,
  name TEXT NOT NULL,
  nominal_ul INTEGER NOT NULL,
  fill REAL NOT NULL,
  tare_mg INTEGER NOT NULL,
  liquids INTEGER NOT NULL CHECK (liquids IN (0, 1))
) STRICT;

CREATE TABLE resupply_point (
  id INTEGER PRIMARY KEY,
  name TEXT NOT NULL,
  kind TEXT NOT NULL,
  after_day INTEGER NOT NULL,
  used INTEGER NOT NULL CHECK (used IN (0, 1)),
  address TEXT NOT NULL,
  transit_days INTEGER NOT NULL,
  fastest_transit_days INTEGER NOT NULL,
  buffer_days INTEGER NOT NULL,
  hold_days INTEGER,
  hold_margin_days INTEGER NOT NULL,
  max_parcel_mg INTEGER,
  max_length_and_girth_m REAL,
  fee_per_parcel_minor INTEGER NOT NULL,
  visit_fee_minor INTEGER NOT NULL,
  detour_m REAL NOT NULL,
  detour_hours REAL NOT NULL,
  store_low_c REAL,
  store_high_c REAL,
  takes_fuel INTEGER NOT NULL CHECK (takes_fuel IN (0, 1)),
  sells_fuel INTEGER NOT NULL CHECK (sells_fuel IN (0, 1)),
  takes_waste INTEGER NOT NULL CHECK (takes_waste IN (0, 1)),
  notes TEXT NOT NULL,
  place INTEGER NOT NULL
) STRICT;

CREATE TABLE open_day (
  resupply_point INTEGER NOT NULL REFERENCES resupply_point (id) DEFERRABLE INITIALLY DEFERRED,
  place INTEGER NOT NULL,
  weekday TEXT NOT NULL,
  PRIMARY KEY (resupply_point, place)
) STRICT, WITHOUT ROWID;

CREATE TABLE closed_date (
  resupply_point INTEGER NOT NULL REFERENCES resupply_point (id) DEFERRABLE INITIALLY DEFERRED,
  place INTEGER NOT NULL,
  date TEXT,
  PRIMARY KEY (resupply_point, place)
) STRICT, WITHOUT ROWID;

CREATE TABLE pin (
  place INTEGER PRIMARY KEY,
  bag TEXT NOT NULL,
  gear INTEGER REFERENCES gear (id) DEFERRABLE INITIALLY DEFERRED,
  member INTEGER REFERENCES member (id) DEFERRABLE INITIALLY DEFERRED,
  forbid INTEGER NOT NULL CHECK (forbid IN (0, 1))
) STRICT;

CREATE TABLE purchase (
  place INTEGER PRIMARY KEY,
  food INTEGER REFERENCES food (id) DEFERRABLE INITIALLY DEFERRED,
  fuel_container TEXT NOT NULL,
  other TEXT NOT NULL,
  net_mg INTEGER NOT NULL,
  shop TEXT NOT NULL,
  count INTEGER NOT NULL,
  paid_minor INTEGER,
  paid_by INTEGER REFERENCES member (id) DEFERRABLE INITIALLY DEFERRED
) STRICT;

CREATE TABLE packed_bag (
  bag TEXT PRIMARY KEY,
  done INTEGER NOT NULL CHECK (done IN (0, 1)),
  place INTEGER NOT NULL
) STRICT, WITHOUT ROWID;

CREATE TABLE weighing (
  bag TEXT NOT NULL REFERENCES packed_bag (bag) DEFERRABLE INITIALLY DEFERRED,
  place INTEGER NOT NULL,
  food INTEGER NOT NULL REFERENCES food (id) DEFERRABLE INITIALLY DEFERRED,
  mass_mg INTEGER NOT NULL,
  PRIMARY KEY (bag, place)
) STRICT, WITHOUT ROWID;

CREATE TABLE bag_end (
  bag TEXT PRIMARY KEY,
  end_of_bag TEXT NOT NULL,
  day INTEGER NOT NULL REFERENCES day (number) DEFERRABLE INITIALLY DEFERRED,
  place INTEGER NOT NULL
) STRICT, WITHOUT ROWID;

CREATE TABLE missing_box (
  place INTEGER PRIMARY KEY,
  resupply_point INTEGER NOT NULL REFERENCES resupply_point (id) DEFERRABLE INITIALLY DEFERRED
) STRICT;
