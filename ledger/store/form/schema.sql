CREATE TABLE "add" (
seq INTEGER NOT NULL,
entry_kind TEXT NOT NULL,
source TEXT NOT NULL,
amount INTEGER NOT NULL,
amount_measure TEXT NOT NULL,
amount_written TEXT NOT NULL,
added_as TEXT NOT NULL,
temp_mdegc INTEGER,
minutes INTEGER, triturated_minutes INTEGER CONSTRAINT ck_add_triturated_minutes CHECK (triturated_minutes >= 0), instrument TEXT,
CONSTRAINT pk_add PRIMARY KEY (seq),
CONSTRAINT ck_add_added_as CHECK (added_as IN ('ingredient', 'top-up', 'rework', 'rinse-liquor', 'old-cake')),
CONSTRAINT ck_add_amount_measure CHECK (amount_measure IN ('uL', 'mg', 'ueach')),
CONSTRAINT ck_add_entry_kind CHECK (entry_kind = 'add'),
CONSTRAINT ck_add_amount CHECK (amount > 0),
CONSTRAINT ck_add_minutes CHECK (minutes >= 0),
CONSTRAINT fk_add_seq_entry_kind FOREIGN KEY(seq, entry_kind) REFERENCES entry (seq, kind),
CONSTRAINT fk_add_source FOREIGN KEY(source) REFERENCES lot (code)
)
STRICT;
CREATE TABLE alembic_version (
version_num VARCHAR(32) NOT NULL,
CONSTRAINT alembic_version_pkc PRIMARY KEY (version_num)
);
CREATE TABLE answer (
seq INTEGER NOT NULL,
entry_kind TEXT NOT NULL,
complaint INTEGER NOT NULL,
outcome TEXT NOT NULL,
told_by TEXT,
told_on TEXT,
is_closed INTEGER,
words TEXT,
CONSTRAINT pk_answer PRIMARY KEY (seq),
CONSTRAINT fk_answer_seq_entry_kind FOREIGN KEY(seq, entry_kind) REFERENCES entry (seq, kind),
CONSTRAINT ck_answer_entry_kind CHECK (entry_kind = 'answer'),
CONSTRAINT ck_answer_complaint CHECK (complaint >= 0),
CONSTRAINT ck_answer_outcome CHECK (outcome IN ('explained', 'replaced', 'held', 'recalled', 'not-ours')),
CONSTRAINT ck_answer_told_on CHECK (length(told_on) = 10),
CONSTRAINT ck_answer_is_closed CHECK (is_closed IN (0, 1)),
CONSTRAINT fk_answer_complaint FOREIGN KEY(complaint) REFERENCES entry (seq),
CONSTRAINT fk_answer_told_by FOREIGN KEY(told_by) REFERENCES person_key (initials)
)
STRICT;
CREATE TABLE bottle (
seq INTEGER NOT NULL,
entry_kind TEXT NOT NULL,
source TEXT NOT NULL,
count INTEGER NOT NULL,
size INTEGER NOT NULL,
size_measure TEXT NOT NULL,
size_written TEXT NOT NULL,
drawn INTEGER NOT NULL,
drawn_measure TEXT NOT NULL,
drawn_written TEXT NOT NULL,
bottles TEXT,
caps TEXT,
fill_check_mg INTEGER,
first_bottle INTEGER,
last_bottle INTEGER,
best_before TEXT, labour_minutes INTEGER CONSTRAINT ck_bottle_labour_minutes CHECK (labour_minutes >= 0),
CONSTRAINT pk_bottle PRIMARY KEY (seq),
CONSTRAINT ck_bottle_drawn_measure CHECK (drawn_measure IN ('uL', 'mg', 'ueach')),
CONSTRAINT ck_bottle_entry_kind CHECK (entry_kind = 'bottle'),
CONSTRAINT ck_bottle_size_measure CHECK (size_measure IN ('uL', 'mg', 'ueach')),
CONSTRAINT ck_bottle_count CHECK (count >= 0),
CONSTRAINT ck_bottle_drawn CHECK (drawn > 0),
CONSTRAINT ck_bottle_fill_check_mg CHECK (fill_check_mg >= 0),
CONSTRAINT ck_bottle_first_bottle CHECK (first_bottle >= 0),
CONSTRAINT ck_bottle_last_bottle CHECK (last_bottle >= 0),
CONSTRAINT ck_bottle_best_before CHECK (length(best_before) = 10),
CONSTRAINT ck_bottle_size CHECK (size > 0),
CONSTRAINT fk_bottle_bottles FOREIGN KEY(bottles) REFERENCES lot (code),
CONSTRAINT fk_bottle_caps FOREIGN KEY(caps) REFERENCES lot (code),
CONSTRAINT fk_bottle_seq_entry_kind FOREIGN KEY(seq, entry_kind) REFERENCES entry (seq, kind),
CONSTRAINT fk_bottle_source FOREIGN KEY(source) REFERENCES lot (code)
)
STRICT;
CREATE TABLE cases (
seq INTEGER NOT NULL,
entry_kind TEXT NOT NULL,
count INTEGER NOT NULL,
holds INTEGER NOT NULL,
first_case INTEGER NOT NULL,
company_prefix TEXT,
CONSTRAINT pk_cases PRIMARY KEY (seq),
CONSTRAINT ck_cases_count CHECK (count >= 0),
CONSTRAINT ck_cases_holds CHECK (holds >= 0),
CONSTRAINT ck_cases_first_case CHECK (first_case >= 0),
CONSTRAINT fk_cases_seq_entry_kind FOREIGN KEY(seq, entry_kind) REFERENCES entry (seq, kind),
CONSTRAINT ck_cases_entry_kind CHECK (entry_kind = 'cases')
)
STRICT;
CREATE TABLE "check" (
seq INTEGER NOT NULL,
entry_kind TEXT NOT NULL,
about INTEGER,
words TEXT,
CONSTRAINT pk_check PRIMARY KEY (seq),
CONSTRAINT ck_check_entry_kind CHECK (entry_kind = 'check'),
CONSTRAINT ck_check_about CHECK (about >= 0),
CONSTRAINT fk_check_about FOREIGN KEY(about) REFERENCES entry (seq),
CONSTRAINT fk_check_seq_entry_kind FOREIGN KEY(seq, entry_kind) REFERENCES entry (seq, kind)
)
STRICT;
CREATE TABLE clean (
seq INTEGER NOT NULL,
entry_kind TEXT NOT NULL,
vessel TEXT NOT NULL,
how TEXT NOT NULL,
last_held TEXT,
CONSTRAINT pk_clean PRIMARY KEY (seq),
CONSTRAINT ck_clean_entry_kind CHECK (entry_kind = 'clean'),
CONSTRAINT fk_clean_seq_entry_kind FOREIGN KEY(seq, entry_kind) REFERENCES entry (seq, kind)
)
STRICT;
CREATE TABLE closing (
seq INTEGER NOT NULL,
entry_kind TEXT NOT NULL,
cause TEXT NOT NULL,
CONSTRAINT pk_closing PRIMARY KEY (seq),
CONSTRAINT fk_closing_seq_entry_kind FOREIGN KEY(seq, entry_kind) REFERENCES entry (seq, kind),
CONSTRAINT ck_closing_entry_kind CHECK (entry_kind = 'closing')
)
STRICT;
CREATE TABLE complaint (
seq INTEGER NOT NULL,
entry_kind TEXT NOT NULL,
symptom TEXT NOT NULL,
party TEXT,
opened TEXT,
stored TEXT,
mixed TEXT,
photo_sha256 TEXT,
words TEXT, photo TEXT, answer_days INTEGER CONSTRAINT ck_complaint_answer_days CHECK (answer_days >= 0),
CONSTRAINT pk_complaint PRIMARY KEY (seq),
CONSTRAINT ck_complaint_entry_kind CHECK (entry_kind = 'complaint'),
CONSTRAINT fk_complaint_seq_entry_kind FOREIGN KEY(seq, entry_kind) REFERENCES entry (seq, kind)
)
STRICT;
CREATE TABLE contact (
seq INTEGER NOT NULL,
entry_kind TEXT NOT NULL,
party TEXT NOT NULL,
reached TEXT NOT NULL,
still_there INTEGER,
still_there_measure TEXT,
still_there_written TEXT,
words TEXT,
CONSTRAINT pk_contact PRIMARY KEY (seq),
CONSTRAINT ck_contact_reached CHECK (reached IN ('spoken', 'left-word', 'no-answer')),
CONSTRAINT ck_contact_still_there CHECK (still_there >= 0),
CONSTRAINT ck_contact_still_there_measure CHECK (still_there_measure IN ('uL', 'mg', 'ueach')),
CONSTRAINT fk_contact_seq_entry_kind FOREIGN KEY(seq, entry_kind) REFERENCES entry (seq, kind),
CONSTRAINT ck_contact_entry_kind CHECK (entry_kind = 'contact')
)
STRICT;
CREATE TABLE count (
seq INTEGER NOT NULL,
entry_kind TEXT NOT NULL,
amount INTEGER NOT NULL,
amount_measure TEXT NOT NULL,
amount_written TEXT NOT NULL,
CONSTRAINT pk_count PRIMARY KEY (seq),
CONSTRAINT ck_count_amount_measure CHECK (amount_measure IN ('uL', 'mg', 'ueach')),
CONSTRAINT ck_count_entry_kind CHECK (entry_kind = 'count'),
CONSTRAINT ck_count_amount CHECK (amount >= 0),
CONSTRAINT fk_count_seq_entry_kind FOREIGN KEY(seq, entry_kind) REFERENCES entry (seq, kind)
)
STRICT;
CREATE TABLE decant (
seq INTEGER NOT NULL,
entry_kind TEXT NOT NULL,
drawn INTEGER NOT NULL,
drawn_measure TEXT NOT NULL,
drawn_written TEXT NOT NULL,
heel INTEGER,
heel_measure TEXT,
heel_written TEXT,
CONSTRAINT pk_decant PRIMARY KEY (seq),
CONSTRAINT ck_decant_drawn_measure CHECK (drawn_measure IN ('uL', 'mg', 'ueach')),
CONSTRAINT ck_decant_entry_kind CHECK (entry_kind = 'decant'),
CONSTRAINT ck_decant_heel_measure CHECK (heel_measure IN ('uL', 'mg', 'ueach')),
CONSTRAINT ck_decant_drawn CHECK (drawn > 0),
CONSTRAINT ck_decant_heel CHECK (heel > 0),
CONSTRAINT fk_decant_seq_entry_kind FOREIGN KEY(seq, entry_kind) REFERENCES entry (seq, kind)
)
STRICT;
CREATE TABLE details (
seq INTEGER NOT NULL,
salt TEXT NOT NULL,
name TEXT,
role TEXT,
phone TEXT,
email TEXT,
address TEXT,
words TEXT, gln TEXT,
CONSTRAINT pk_details PRIMARY KEY (seq),
CONSTRAINT ck_details_salt CHECK (length(salt) = 64),
CONSTRAINT fk_details_seq FOREIGN KEY(seq) REFERENCES entry (seq)
)
STRICT;
CREATE TABLE deviation (
seq INTEGER NOT NULL,
entry_kind TEXT NOT NULL,
rule TEXT NOT NULL,
text TEXT NOT NULL,
about INTEGER,
CONSTRAINT pk_deviation PRIMARY KEY (seq),
CONSTRAINT ck_deviation_entry_kind CHECK (entry_kind = 'deviation'),
CONSTRAINT ck_deviation_about CHECK (about >= 0),
CONSTRAINT fk_deviation_about FOREIGN KEY(about) REFERENCES entry (seq),
CONSTRAINT fk_deviation_seq_entry_kind FOREIGN KEY(seq, entry_kind) REFERENCES entry (seq, kind)
)
STRICT;
CREATE TABLE entry (
seq INTEGER NOT NULL,
kind TEXT NOT NULL,
lot INTEGER,
happened_at TEXT NOT NULL,
offset_min INTEGER NOT NULL,
precision TEXT NOT NULL,
recorded_at TEXT NOT NULL,
origin TEXT NOT NULL,
sheet TEXT,
"by" TEXT,
corrects INTEGER,
stands_for INTEGER NOT NULL,
reason TEXT,
body TEXT NOT NULL,
leaf BLOB NOT NULL,
CONSTRAINT pk_entry PRIMARY KEY (seq),
CONSTRAINT ck_entry_by CHECK (by IS NOT NULL OR kind = 'house'),
CONSTRAINT ck_entry_kind CHECK (kind IN ('house', 'person', 'material', 'formula', 'receipt', 'start', 'add', 'rest', 'filter', 'rinse', 'decant', 'look', 'measure', 'makeup', 'finish', 'bottle', 'labels', 'move', 'judge', 'check', 'complaint', 'count', 'note', 'deviation', 'clean', 'equipment', 'strike', 'party', 'limit', 'withdrawal', 'contact', 'closing', 'answer', 'forecast', 'trial', 'forget', 'cases')),
CONSTRAINT ck_entry_origin CHECK (origin IN ('bench', 'paper', 'instrument', 'memory')),
CONSTRAINT ck_entry_precision CHECK (precision IN ('exact', 'about', 'day')),
CONSTRAINT ck_entry_leaf CHECK (length(leaf) = 32),
CONSTRAINT ck_entry_order CHECK (seq > 0 AND stands_for <= seq AND corrects < seq),
CONSTRAINT fk_entry_corrects FOREIGN KEY(corrects) REFERENCES entry (seq),
CONSTRAINT fk_entry_stands_for FOREIGN KEY(stands_for) REFERENCES entry (seq),
CONSTRAINT uq_entry_corrects UNIQUE (corrects),
CONSTRAINT uq_entry_seq_kind UNIQUE (seq, kind),
CONSTRAINT fk_entry_by FOREIGN KEY("by") REFERENCES person_key (initials) DEFERRABLE INITIALLY DEFERRED,
CONSTRAINT fk_entry_lot FOREIGN KEY(lot) REFERENCES lot (id) DEFERRABLE INITIALLY DEFERRED
)
STRICT;
CREATE TABLE equipment (
seq INTEGER NOT NULL,
entry_kind TEXT NOT NULL,
name TEXT NOT NULL,
words TEXT NOT NULL, holds INTEGER CONSTRAINT ck_equipment_holds CHECK (holds > 0), holds_measure TEXT CONSTRAINT ck_equipment_holds_measure CHECK (holds_measure IN ('uL', 'mg', 'ueach')), holds_written TEXT,
CONSTRAINT pk_equipment PRIMARY KEY (seq),
CONSTRAINT ck_equipment_entry_kind CHECK (entry_kind = 'equipment'),
CONSTRAINT fk_equipment_seq_entry_kind FOREIGN KEY(seq, entry_kind) REFERENCES entry (seq, kind)
)
STRICT;
CREATE TABLE filter (
seq INTEGER NOT NULL,
entry_kind TEXT NOT NULL,
pass_no INTEGER NOT NULL,
medium TEXT NOT NULL,
volume_in INTEGER NOT NULL,
volume_in_measure TEXT NOT NULL,
volume_in_written TEXT NOT NULL,
volume_out INTEGER NOT NULL,
volume_out_measure TEXT NOT NULL,
volume_out_written TEXT NOT NULL,
pore_low_nm INTEGER,
pore_high_nm INTEGER,
cake TEXT,
cake_of TEXT,
precoat INTEGER,
precoat_measure TEXT,
precoat_written TEXT,
vacuum_pa INTEGER,
vacuum_reference TEXT,
temp_mdegc INTEGER,
first_runnings INTEGER,
first_runnings_measure TEXT,
first_runnings_written TEXT,
minutes INTEGER, in_cake INTEGER CONSTRAINT ck_filter_in_cake CHECK (in_cake > 0), in_cake_measure TEXT CONSTRAINT ck_filter_in_cake_measure CHECK (in_cake_measure IN ('uL', 'mg', 'ueach')), in_cake_written TEXT, paper TEXT CONSTRAINT fk_filter_paper REFERENCES lot (code), wetted_with TEXT CONSTRAINT fk_filter_wetted_with REFERENCES lot (code),
CONSTRAINT pk_filter PRIMARY KEY (seq),
CONSTRAINT ck_filter_cake CHECK (cake IN ('fresh', 'same')),
CONSTRAINT ck_filter_entry_kind CHECK (entry_kind = 'filter'),
CONSTRAINT ck_filter_first_runnings_measure CHECK (first_runnings_measure IN ('uL', 'mg', 'ueach')),
CONSTRAINT ck_filter_precoat_measure CHECK (precoat_measure IN ('uL', 'mg', 'ueach')),
CONSTRAINT ck_filter_vacuum_reference CHECK (vacuum_reference IN ('below-atmosphere', 'absolute')),
CONSTRAINT ck_filter_volume_in_measure CHECK (volume_in_measure IN ('uL', 'mg', 'ueach')),
CONSTRAINT ck_filter_volume_out_measure CHECK (volume_out_measure IN ('uL', 'mg', 'ueach')),
CONSTRAINT ck_filter_first_runnings CHECK (first_runnings > 0),
CONSTRAINT ck_filter_minutes CHECK (minutes >= 0),
CONSTRAINT ck_filter_pass_no CHECK (pass_no >= 0),
CONSTRAINT ck_filter_pore_high_nm CHECK (pore_high_nm >= 0),
CONSTRAINT ck_filter_pore_low_nm CHECK (pore_low_nm >= 0),
CONSTRAINT ck_filter_precoat CHECK (precoat > 0),
CONSTRAINT ck_filter_vacuum_pa CHECK (vacuum_pa >= 0),
CONSTRAINT ck_filter_volume_in CHECK (volume_in > 0),
CONSTRAINT ck_filter_volume_out CHECK (volume_out > 0),
CONSTRAINT fk_filter_cake_of FOREIGN KEY(cake_of) REFERENCES lot (code),
CONSTRAINT fk_filter_seq_entry_kind FOREIGN KEY(seq, entry_kind) REFERENCES entry (seq, kind)
)
STRICT;
CREATE TABLE finish (
seq INTEGER NOT NULL,
entry_kind TEXT NOT NULL,
volume INTEGER NOT NULL,
volume_measure TEXT NOT NULL,
volume_written TEXT NOT NULL,
temp_mdegc INTEGER, waste INTEGER CONSTRAINT ck_finish_waste CHECK (waste > 0), waste_measure TEXT CONSTRAINT ck_finish_waste_measure CHECK (waste_measure IN ('uL', 'mg', 'ueach')), waste_written TEXT, labour_minutes INTEGER CONSTRAINT ck_finish_labour_minutes CHECK (labour_minutes >= 0),
CONSTRAINT pk_finish PRIMARY KEY (seq),
CONSTRAINT ck_finish_entry_kind CHECK (entry_kind = 'finish'),
CONSTRAINT ck_finish_volume_measure CHECK (volume_measure IN ('uL', 'mg', 'ueach')),
CONSTRAINT ck_finish_volume CHECK (volume > 0),
CONSTRAINT fk_finish_seq_entry_kind FOREIGN KEY(seq, entry_kind) REFERENCES entry (seq, kind)
)
STRICT;
CREATE TABLE forecast (
seq INTEGER NOT NULL,
entry_kind TEXT NOT NULL,
oils TEXT NOT NULL,
carried TEXT,
spirit_mpct INTEGER,
clear_low_mpct INTEGER,
clear_likely_mpct INTEGER,
clear_high_mpct INTEGER,
neat_low_milli INTEGER,
neat_high_milli INTEGER,
syrup_low_milli INTEGER,
syrup_high_milli INTEGER,
glass_low_milli INTEGER,
glass_high_milli INTEGER,
dose_ul INTEGER,
own_readings INTEGER,
own_least_micro INTEGER,
own_most_micro INTEGER,
CONSTRAINT pk_forecast PRIMARY KEY (seq),
CONSTRAINT ck_forecast_carried CHECK (carried IN ('yes', 'edge', 'no')),
CONSTRAINT ck_forecast_spirit_mpct CHECK (spirit_mpct >= 0),
CONSTRAINT ck_forecast_clear_low_mpct CHECK (clear_low_mpct >= 0),
CONSTRAINT ck_forecast_clear_likely_mpct CHECK (clear_likely_mpct >= 0),
CONSTRAINT ck_forecast_clear_high_mpct CHECK (clear_high_mpct >= 0),
CONSTRAINT ck_forecast_neat_low_milli CHECK (neat_low_milli >= 0),
CONSTRAINT ck_forecast_neat_high_milli CHECK (neat_high_milli >= 0),
CONSTRAINT ck_forecast_syrup_low_milli CHECK (syrup_low_milli >= 0),
CONSTRAINT ck_forecast_syrup_high_milli CHECK (syrup_high_milli >= 0),
CONSTRAINT ck_forecast_glass_low_milli CHECK (glass_low_milli >= 0),
CONSTRAINT ck_forecast_glass_high_milli CHECK (glass_high_milli >= 0),
CONSTRAINT ck_forecast_dose_ul CHECK (dose_ul >= 0),
CONSTRAINT ck_forecast_own_readings CHECK (own_readings >= 0),
CONSTRAINT ck_forecast_own_least_micro CHECK (own_least_micro >= 0),
CONSTRAINT ck_forecast_own_most_micro CHECK (own_most_micro >= 0),
CONSTRAINT fk_forecast_seq_entry_kind FOREIGN KEY(seq, entry_kind) REFERENCES entry (seq, kind),
CONSTRAINT ck_forecast_entry_kind CHECK (entry_kind = 'forecast')
)
STRICT;
CREATE TABLE forget (
seq INTEGER NOT NULL,
entry_kind TEXT NOT NULL,
party TEXT,
person TEXT,
CONSTRAINT pk_forget PRIMARY KEY (seq),
CONSTRAINT fk_forget_seq_entry_kind FOREIGN KEY(seq, entry_kind) REFERENCES entry (seq, kind),
CONSTRAINT ck_forget_entry_kind CHECK (entry_kind = 'forget'),
CONSTRAINT fk_forget_person FOREIGN KEY(person) REFERENCES person_key (initials)
)
STRICT;
CREATE TABLE forget_entries (
seq INTEGER NOT NULL,
line INTEGER NOT NULL,
entry INTEGER NOT NULL,
is_kept INTEGER NOT NULL,
CONSTRAINT pk_forget_entries PRIMARY KEY (seq, line),
CONSTRAINT ck_forget_entries_entry CHECK (entry >= 0),
CONSTRAINT ck_forget_entries_is_kept CHECK (is_kept IN (0, 1)),
CONSTRAINT fk_forget_entries_seq FOREIGN KEY(seq) REFERENCES forget (seq),
CONSTRAINT fk_forget_entries_entry FOREIGN KEY(entry) REFERENCES entry (seq)
)
WITHOUT ROWID,
STRICT;
CREATE TABLE formula (
seq INTEGER NOT NULL,
entry_kind TEXT NOT NULL,
code TEXT NOT NULL,
version INTEGER NOT NULL,
product TEXT NOT NULL,
product_kind TEXT NOT NULL,
basis INTEGER NOT NULL,
basis_measure TEXT NOT NULL,
basis_written TEXT NOT NULL,
wanted_clarity TEXT,
pour_parts INTEGER,
best_before_days INTEGER,
yield_min_mpct INTEGER,
yield_max_mpct INTEGER,
label_text TEXT,
caution TEXT,
prepared_by TEXT,
checked_by TEXT,
valid_from TEXT, abv_min_mpct INTEGER CONSTRAINT ck_formula_abv_min_mpct CHECK (abv_min_mpct >= 0), abv_max_mpct INTEGER CONSTRAINT ck_formula_abv_max_mpct CHECK (abv_max_mpct >= 0), claim TEXT, dose INTEGER CONSTRAINT ck_formula_dose CHECK (dose > 0), dose_measure TEXT CONSTRAINT ck_formula_dose_measure CHECK (dose_measure IN ('uL', 'mg', 'ueach')), dose_written TEXT, dose_into INTEGER CONSTRAINT ck_formula_dose_into CHECK (dose_into > 0), dose_into_measure TEXT CONSTRAINT ck_formula_dose_into_measure CHECK (dose_into_measure IN ('uL', 'mg', 'ueach')), dose_into_written TEXT, packaging TEXT,
CONSTRAINT pk_formula PRIMARY KEY (seq),
CONSTRAINT ck_formula_basis_measure CHECK (basis_measure IN ('uL', 'mg', 'ueach')),
CONSTRAINT ck_formula_entry_kind CHECK (entry_kind = 'formula'),
CONSTRAINT ck_formula_product_kind CHECK (product_kind IN ('essence', 'washed-essence', 'gum-emulsion', 'blend', 'macerate', 'base-syrup', 'syrup', 'rework')),
CONSTRAINT ck_formula_wanted_clarity CHECK (wanted_clarity IN ('bright', 'clear', 'hazy', 'opalescent', 'cloudy', 'milky')),
CONSTRAINT ck_formula_basis CHECK (basis > 0),
CONSTRAINT ck_formula_best_before_days CHECK (best_before_days >= 0),
CONSTRAINT ck_formula_valid_from CHECK (length(valid_from) = 10),
CONSTRAINT ck_formula_pour_parts CHECK (pour_parts >= 0),
CONSTRAINT ck_formula_version CHECK (version >= 0),
CONSTRAINT ck_formula_yield_max_mpct CHECK (yield_max_mpct >= 0),
CONSTRAINT ck_formula_yield_min_mpct CHECK (yield_min_mpct >= 0),
CONSTRAINT fk_formula_checked_by FOREIGN KEY(checked_by) REFERENCES person_key (initials),
CONSTRAINT fk_formula_prepared_by FOREIGN KEY(prepared_by) REFERENCES person_key (initials),
CONSTRAINT fk_formula_seq_entry_kind FOREIGN KEY(seq, entry_kind) REFERENCES entry (seq, kind)
)
STRICT;
CREATE TABLE formula_keeping (
seq INTEGER NOT NULL,
line INTEGER NOT NULL,
storage TEXT NOT NULL,
days INTEGER NOT NULL,
opened_days INTEGER,
brix_min_mpct INTEGER,
CONSTRAINT pk_formula_keeping PRIMARY KEY (seq, line),
CONSTRAINT ck_formula_keeping_days CHECK (days >= 0),
CONSTRAINT ck_formula_keeping_opened_days CHECK (opened_days >= 0),
CONSTRAINT ck_formula_keeping_brix_min_mpct CHECK (brix_min_mpct >= 0),
CONSTRAINT fk_formula_keeping_seq FOREIGN KEY(seq) REFERENCES formula (seq)
)
WITHOUT ROWID,
STRICT;
CREATE TABLE formula_lines (
seq INTEGER NOT NULL,
line INTEGER NOT NULL,
material TEXT,
amount INTEGER NOT NULL,
amount_measure TEXT NOT NULL,
amount_written TEXT NOT NULL,
tolerance_mpct INTEGER,
overage_mpct INTEGER, formula TEXT,
CONSTRAINT pk_formula_lines PRIMARY KEY (seq, line),
CONSTRAINT ck_formula_lines_amount_measure CHECK (amount_measure IN ('uL', 'mg', 'ueach')),
CONSTRAINT ck_formula_lines_amount CHECK (amount > 0),
CONSTRAINT ck_formula_lines_overage_mpct CHECK (overage_mpct >= 0),
CONSTRAINT ck_formula_lines_tolerance_mpct CHECK (tolerance_mpct >= 0),
CONSTRAINT fk_formula_lines_material FOREIGN KEY(material) REFERENCES material_key (code),
CONSTRAINT fk_formula_lines_seq FOREIGN KEY(seq) REFERENCES formula (seq)
)
WITHOUT ROWID,
STRICT;
CREATE TABLE formula_steps (
seq INTEGER NOT NULL,
line INTEGER NOT NULL,
verb TEXT NOT NULL,
words TEXT,
minutes_min INTEGER,
minutes_max INTEGER,
temp_min_mdegc INTEGER,
temp_max_mdegc INTEGER,
pore_max_nm INTEGER,
passes_min INTEGER, rest_for TEXT CONSTRAINT ck_formula_steps_rest_for CHECK (rest_for IN ('macerate', 'settle', 'chill', 'warm')), precoat_min INTEGER CONSTRAINT ck_formula_steps_precoat_min CHECK (precoat_min > 0), precoat_min_measure TEXT CONSTRAINT ck_formula_steps_precoat_min_measure CHECK (precoat_min_measure IN ('uL', 'mg', 'ueach')), precoat_min_written TEXT, looked_at TEXT CONSTRAINT ck_formula_steps_looked_at CHECK (looked_at IN ('neat', 'in-syrup', 'as-poured')), dilution TEXT, worst TEXT CONSTRAINT ck_formula_steps_worst CHECK (worst IN ('bright', 'clear', 'hazy', 'opalescent', 'cloudy', 'milky')), age_minutes INTEGER CONSTRAINT ck_formula_steps_age_minutes CHECK (age_minutes >= 0),
CONSTRAINT pk_formula_steps PRIMARY KEY (seq, line),
CONSTRAINT ck_formula_steps_minutes_max CHECK (minutes_max >= 0),
CONSTRAINT ck_formula_steps_minutes_min CHECK (minutes_min >= 0),
CONSTRAINT ck_formula_steps_passes_min CHECK (passes_min >= 0),
CONSTRAINT ck_formula_steps_pore_max_nm CHECK (pore_max_nm >= 0),
CONSTRAINT fk_formula_steps_seq FOREIGN KEY(seq) REFERENCES formula (seq)
)
WITHOUT ROWID,
STRICT;
CREATE TABLE house (
seq INTEGER NOT NULL,
entry_kind TEXT NOT NULL,
name TEXT NOT NULL,
currency TEXT NOT NULL,
address TEXT,
country TEXT,
time_zone TEXT NOT NULL,
fluid_ounce TEXT NOT NULL, hour_minor INTEGER CONSTRAINT ck_house_hour_minor CHECK (hour_minor >= 0), phone TEXT, hour_digits INTEGER CONSTRAINT ck_house_hour_digits CHECK (hour_digits >= 0), doubts TEXT, keep_months INTEGER CONSTRAINT ck_house_keep_months CHECK (keep_months >= 0), web TEXT, gln TEXT, company_prefix TEXT,
CONSTRAINT pk_house PRIMARY KEY (seq),
CONSTRAINT ck_house_entry_kind CHECK (entry_kind = 'house'),
CONSTRAINT fk_house_seq_entry_kind FOREIGN KEY(seq, entry_kind) REFERENCES entry (seq, kind)
)
STRICT;
CREATE TABLE house_articles (
seq INTEGER NOT NULL,
line INTEGER NOT NULL,
product TEXT NOT NULL,
gtin TEXT NOT NULL,
size INTEGER,
size_measure TEXT,
size_written TEXT,
CONSTRAINT pk_house_articles PRIMARY KEY (seq, line),
CONSTRAINT ck_house_articles_size CHECK (size > 0),
CONSTRAINT ck_house_articles_size_measure CHECK (size_measure IN ('uL', 'mg', 'ueach')),
CONSTRAINT fk_house_articles_seq FOREIGN KEY(seq) REFERENCES house (seq)
)
WITHOUT ROWID,
STRICT;
CREATE TABLE judge (
seq INTEGER NOT NULL,
entry_kind TEXT NOT NULL,
verdict TEXT NOT NULL,
CONSTRAINT pk_judge PRIMARY KEY (seq),
CONSTRAINT ck_judge_entry_kind CHECK (entry_kind = 'judge'),
CONSTRAINT ck_judge_verdict CHECK (verdict IN ('hold', 'release', 'reject', 'rework', 'recall')),
CONSTRAINT fk_judge_seq_entry_kind FOREIGN KEY(seq, entry_kind) REFERENCES entry (seq, kind)
)
STRICT;
CREATE TABLE labels (
seq INTEGER NOT NULL,
entry_kind TEXT NOT NULL,
printed INTEGER NOT NULL,
used INTEGER,
spoiled INTEGER, stock TEXT CONSTRAINT fk_labels_stock REFERENCES lot (code), across TEXT CONSTRAINT ck_labels_across CHECK (across IN ('HOLD', 'SPECIMEN')),
CONSTRAINT pk_labels PRIMARY KEY (seq),
CONSTRAINT ck_labels_entry_kind CHECK (entry_kind = 'labels'),
CONSTRAINT ck_labels_printed CHECK (printed >= 0),
CONSTRAINT ck_labels_spoiled CHECK (spoiled >= 0),
CONSTRAINT ck_labels_used CHECK (used >= 0),
CONSTRAINT fk_labels_seq_entry_kind FOREIGN KEY(seq, entry_kind) REFERENCES entry (seq, kind)
)
STRICT;
CREATE TABLE level (
seq INTEGER NOT NULL,
lot INTEGER NOT NULL,
amount INTEGER NOT NULL,
CONSTRAINT pk_level PRIMARY KEY (seq),
CONSTRAINT ck_level_amount CHECK (amount >= 0),
CONSTRAINT fk_level_lot FOREIGN KEY(lot) REFERENCES lot (id),
CONSTRAINT fk_level_seq FOREIGN KEY(seq) REFERENCES entry (seq)
)
STRICT;
CREATE TABLE "limit" (
seq INTEGER NOT NULL,
entry_kind TEXT NOT NULL,
code TEXT NOT NULL,
substance TEXT NOT NULL,
bound TEXT NOT NULL,
value_micro INTEGER NOT NULL,
unit TEXT NOT NULL,
basis TEXT NOT NULL,
place TEXT NOT NULL,
citation TEXT NOT NULL,
known_by TEXT NOT NULL,
says TEXT,
since TEXT,
until TEXT,
CONSTRAINT pk_limit PRIMARY KEY (seq),
CONSTRAINT ck_limit_bound CHECK (bound IN ('at-most', 'less-than', 'from', 'above')),
CONSTRAINT ck_limit_value_micro CHECK (value_micro >= 0),
CONSTRAINT ck_limit_unit CHECK (unit IN ('mg/kg body weight', 'mg/kg', 'mg/L', '% vol', '% mass', 'g/100mL')),
CONSTRAINT ck_limit_basis CHECK (basis IN ('a-day', 'as-served', 'as-sold')),
CONSTRAINT ck_limit_known_by CHECK (known_by IN ('read', 'recalled')),
CONSTRAINT ck_limit_since CHECK (length(since) = 10),
CONSTRAINT ck_limit_until CHECK (length(until) = 10),
CONSTRAINT fk_limit_seq_entry_kind FOREIGN KEY(seq, entry_kind) REFERENCES entry (seq, kind),
CONSTRAINT ck_limit_entry_kind CHECK (entry_kind = 'limit')
)
STRICT;
CREATE TABLE look (
seq INTEGER NOT NULL,
entry_kind TEXT NOT NULL,
grade TEXT NOT NULL,
looked_at TEXT NOT NULL,
dilution TEXT,
ntu_milli INTEGER,
instrument TEXT,
zeroed_on TEXT,
age_minutes INTEGER,
temp_mdegc INTEGER,
ring INTEGER NOT NULL,
louche INTEGER NOT NULL,
sediment INTEGER NOT NULL,
floc INTEGER NOT NULL,
crystals INTEGER NOT NULL,
words TEXT,
CONSTRAINT pk_look PRIMARY KEY (seq),
CONSTRAINT ck_look_entry_kind CHECK (entry_kind = 'look'),
CONSTRAINT ck_look_grade CHECK (grade IN ('bright', 'clear', 'hazy', 'opalescent', 'cloudy', 'milky')),
CONSTRAINT ck_look_looked_at CHECK (looked_at IN ('neat', 'in-syrup', 'as-poured')),
CONSTRAINT ck_look_age_minutes CHECK (age_minutes >= 0),
CONSTRAINT ck_look_crystals CHECK (crystals IN (0, 1)),
CONSTRAINT ck_look_floc CHECK (floc IN (0, 1)),
CONSTRAINT ck_look_louche CHECK (louche IN (0, 1)),
CONSTRAINT ck_look_ntu_milli CHECK (ntu_milli >= 0),
CONSTRAINT ck_look_ring CHECK (ring IN (0, 1)),
CONSTRAINT ck_look_sediment CHECK (sediment IN (0, 1)),
CONSTRAINT fk_look_seq_entry_kind FOREIGN KEY(seq, entry_kind) REFERENCES entry (seq, kind)
)
STRICT;
CREATE TABLE lot (
id INTEGER NOT NULL,
code TEXT NOT NULL,
lot_type TEXT NOT NULL,
measure TEXT NOT NULL,
CONSTRAINT pk_lot PRIMARY KEY (id),
CONSTRAINT ck_lot_lot_type CHECK (lot_type IN ('received', 'made', 'rinse', 'packed')),
CONSTRAINT ck_lot_measure CHECK (measure IN ('uL', 'mg', 'ueach')),
CONSTRAINT ck_lot_code CHECK (length(code) BETWEEN 1 AND 20),
CONSTRAINT fk_lot_id FOREIGN KEY(id) REFERENCES entry (seq) DEFERRABLE INITIALLY DEFERRED,
CONSTRAINT uq_lot_code UNIQUE (code)
)
STRICT;
CREATE TABLE makeup (
seq INTEGER NOT NULL,
entry_kind TEXT NOT NULL,
volume INTEGER NOT NULL,
volume_measure TEXT NOT NULL,
volume_written TEXT NOT NULL,
source TEXT NOT NULL,
used INTEGER NOT NULL,
used_measure TEXT NOT NULL,
used_written TEXT NOT NULL,
temp_mdegc INTEGER,
CONSTRAINT pk_makeup PRIMARY KEY (seq),
CONSTRAINT ck_makeup_entry_kind CHECK (entry_kind = 'makeup'),
CONSTRAINT ck_makeup_used_measure CHECK (used_measure IN ('uL', 'mg', 'ueach')),
CONSTRAINT ck_makeup_volume_measure CHECK (volume_measure IN ('uL', 'mg', 'ueach')),
CONSTRAINT ck_makeup_used CHECK (used > 0),
CONSTRAINT ck_makeup_volume CHECK (volume > 0),
CONSTRAINT fk_makeup_seq_entry_kind FOREIGN KEY(seq, entry_kind) REFERENCES entry (seq, kind),
CONSTRAINT fk_makeup_source FOREIGN KEY(source) REFERENCES lot (code)
)
STRICT;
CREATE TABLE material (
seq INTEGER NOT NULL,
entry_kind TEXT NOT NULL,
code TEXT NOT NULL,
name TEXT NOT NULL,
sort TEXT NOT NULL,
how_obtained TEXT,
density_mg_per_l INTEGER,
density_temp_mdegc INTEGER,
abv_mpct INTEGER,
food_grade TEXT NOT NULL,
allergens TEXT,
ingredient_name TEXT,
caution TEXT, additive TEXT, nutrition TEXT,
CONSTRAINT pk_material PRIMARY KEY (seq),
CONSTRAINT ck_material_entry_kind CHECK (entry_kind = 'material'),
CONSTRAINT ck_material_food_grade CHECK (food_grade IN ('yes', 'no', 'unknown')),
CONSTRAINT ck_material_how_obtained CHECK (how_obtained IN ('expressed', 'distilled', 'folded', 'terpeneless', 'extracted', 'synthetic')),
CONSTRAINT ck_material_sort CHECK (sort IN ('oil', 'ethanol', 'clarifier', 'sugar', 'water', 'acid', 'preservative', 'gum', 'colour', 'bottle', 'closure', 'label', 'filter', 'other')),
CONSTRAINT ck_material_abv_mpct CHECK (abv_mpct >= 0),
CONSTRAINT ck_material_density_mg_per_l CHECK (density_mg_per_l >= 0),
CONSTRAINT fk_material_seq_entry_kind FOREIGN KEY(seq, entry_kind) REFERENCES entry (seq, kind)
)
STRICT;
CREATE TABLE material_constituents (
seq INTEGER NOT NULL,
line INTEGER NOT NULL,
substance TEXT NOT NULL,
fraction_ppm INTEGER NOT NULL,
CONSTRAINT pk_material_constituents PRIMARY KEY (seq, line),
CONSTRAINT ck_material_constituents_fraction_ppm CHECK (fraction_ppm >= 0),
CONSTRAINT fk_material_constituents_seq FOREIGN KEY(seq) REFERENCES material (seq)
)
WITHOUT ROWID,
STRICT;
CREATE TABLE material_key (
code TEXT NOT NULL,
seq INTEGER NOT NULL,
CONSTRAINT pk_material_key PRIMARY KEY (code),
CONSTRAINT fk_material_key_seq FOREIGN KEY(seq) REFERENCES entry (seq) DEFERRABLE INITIALLY DEFERRED,
CONSTRAINT uq_material_key_seq UNIQUE (seq)
)
WITHOUT ROWID,
STRICT;
CREATE TABLE material_names (
seq INTEGER NOT NULL,
line INTEGER NOT NULL,
language TEXT NOT NULL,
name TEXT NOT NULL,
CONSTRAINT pk_material_names PRIMARY KEY (seq, line),
CONSTRAINT fk_material_names_seq FOREIGN KEY(seq) REFERENCES material (seq)
)
WITHOUT ROWID,
STRICT;
CREATE TABLE measure (
seq INTEGER NOT NULL,
entry_kind TEXT NOT NULL,
what TEXT NOT NULL,
reading_micro INTEGER NOT NULL,
unit TEXT NOT NULL,
written TEXT NOT NULL,
temp_mdegc INTEGER,
instrument TEXT,
CONSTRAINT pk_measure PRIMARY KEY (seq),
CONSTRAINT ck_measure_entry_kind CHECK (entry_kind = 'measure'),
CONSTRAINT ck_measure_what CHECK (what IN ('brix', 'abv', 'density', 'ph', 'temperature', 'weight')),
CONSTRAINT fk_measure_seq_entry_kind FOREIGN KEY(seq, entry_kind) REFERENCES entry (seq, kind)
)
STRICT;
CREATE TABLE move (
seq INTEGER NOT NULL,
entry_kind TEXT NOT NULL,
moved_as TEXT NOT NULL,
amount INTEGER NOT NULL,
amount_measure TEXT NOT NULL,
amount_written TEXT NOT NULL,
party TEXT,
document TEXT, witness TEXT,
CONSTRAINT pk_move PRIMARY KEY (seq),
CONSTRAINT ck_move_amount_measure CHECK (amount_measure IN ('uL', 'mg', 'ueach')),
CONSTRAINT ck_move_entry_kind CHECK (entry_kind = 'move'),
CONSTRAINT ck_move_moved_as CHECK (moved_as IN ('sale', 'sample', 'tasting', 'on-return', 'returned', 'breakage', 'retained', 'destroyed')),
CONSTRAINT ck_move_amount CHECK (amount > 0),
CONSTRAINT fk_move_seq_entry_kind FOREIGN KEY(seq, entry_kind) REFERENCES entry (seq, kind)
)
STRICT;
CREATE TABLE note (
seq INTEGER NOT NULL,
entry_kind TEXT NOT NULL,
text TEXT NOT NULL,
CONSTRAINT pk_note PRIMARY KEY (seq),
CONSTRAINT ck_note_entry_kind CHECK (entry_kind = 'note'),
CONSTRAINT fk_note_seq_entry_kind FOREIGN KEY(seq, entry_kind) REFERENCES entry (seq, kind)
)
STRICT;
CREATE TABLE party (
seq INTEGER NOT NULL,
entry_kind TEXT NOT NULL,
name TEXT,
phone TEXT,
email TEXT,
address TEXT,
words TEXT, code TEXT, commitment TEXT, gln TEXT,
CONSTRAINT pk_party PRIMARY KEY (seq),
CONSTRAINT fk_party_seq_entry_kind FOREIGN KEY(seq, entry_kind) REFERENCES entry (seq, kind),
CONSTRAINT ck_party_entry_kind CHECK (entry_kind = 'party')
)
STRICT;
CREATE TABLE person (
seq INTEGER NOT NULL,
entry_kind TEXT NOT NULL,
initials TEXT NOT NULL,
name TEXT,
role TEXT, commitment TEXT,
CONSTRAINT pk_person PRIMARY KEY (seq),
CONSTRAINT ck_person_entry_kind CHECK (entry_kind = 'person'),
CONSTRAINT fk_person_seq_entry_kind FOREIGN KEY(seq, entry_kind) REFERENCES entry (seq, kind)
)
STRICT;
CREATE TABLE person_key (
initials TEXT NOT NULL,
seq INTEGER NOT NULL,
CONSTRAINT pk_person_key PRIMARY KEY (initials),
CONSTRAINT fk_person_key_seq FOREIGN KEY(seq) REFERENCES entry (seq) DEFERRABLE INITIALLY DEFERRED,
CONSTRAINT uq_person_key_seq UNIQUE (seq)
)
WITHOUT ROWID,
STRICT;
CREATE TABLE posting (
seq INTEGER NOT NULL,
line INTEGER NOT NULL,
source INTEGER,
target INTEGER,
place TEXT,
taken INTEGER NOT NULL,
given INTEGER NOT NULL,
CONSTRAINT pk_posting PRIMARY KEY (seq, line),
CONSTRAINT ck_posting_place CHECK (place IN ('supplier', 'filling', 'waste', 'sale', 'sample', 'tasting', 'on-return', 'returned', 'breakage', 'retained', 'destroyed')),
CONSTRAINT ck_posting_two_ends CHECK (CASE WHEN source IS NULL THEN 1 ELSE 0 END + CASE WHEN target IS NULL THEN 1 ELSE 0 END + CASE WHEN place IS NULL THEN 1 ELSE 0 END = 1),
CONSTRAINT ck_posting_ends CHECK (source <> target),
CONSTRAINT ck_posting_amounts CHECK (taken >= 0 AND given >= 0),
CONSTRAINT fk_posting_seq FOREIGN KEY(seq) REFERENCES entry (seq),
CONSTRAINT fk_posting_source FOREIGN KEY(source) REFERENCES lot (id),
CONSTRAINT fk_posting_target FOREIGN KEY(target) REFERENCES lot (id)
)
WITHOUT ROWID,
STRICT;
CREATE TABLE receipt (
seq INTEGER NOT NULL,
entry_kind TEXT NOT NULL,
material TEXT NOT NULL,
amount INTEGER NOT NULL,
amount_measure TEXT NOT NULL,
amount_written TEXT NOT NULL,
supplier TEXT,
supplier_lot TEXT,
cost_minor INTEGER,
best_before TEXT,
certificate TEXT,
certificate_sha256 TEXT,
density_mg_per_l INTEGER,
abv_mpct INTEGER,
food_grade TEXT, duty_minor INTEGER CONSTRAINT ck_receipt_duty_minor CHECK (duty_minor >= 0), document TEXT, cost_digits INTEGER CONSTRAINT ck_receipt_cost_digits CHECK (cost_digits >= 0),
CONSTRAINT pk_receipt PRIMARY KEY (seq),
CONSTRAINT ck_receipt_amount_measure CHECK (amount_measure IN ('uL', 'mg', 'ueach')),
CONSTRAINT ck_receipt_entry_kind CHECK (entry_kind = 'receipt'),
CONSTRAINT ck_receipt_food_grade CHECK (food_grade IN ('yes', 'no', 'unknown')),
CONSTRAINT ck_receipt_abv_mpct CHECK (abv_mpct >= 0),
CONSTRAINT ck_receipt_amount CHECK (amount > 0),
CONSTRAINT ck_receipt_cost_minor CHECK (cost_minor >= 0),
CONSTRAINT ck_receipt_density_mg_per_l CHECK (density_mg_per_l >= 0),
CONSTRAINT ck_receipt_best_before CHECK (length(best_before) = 10),
CONSTRAINT fk_receipt_material FOREIGN KEY(material) REFERENCES material_key (code),
CONSTRAINT fk_receipt_seq_entry_kind FOREIGN KEY(seq, entry_kind) REFERENCES entry (seq, kind)
)
STRICT;
CREATE TABLE rest (
seq INTEGER NOT NULL,
entry_kind TEXT NOT NULL,
purpose TEXT NOT NULL,
started_at TEXT NOT NULL,
ended_at TEXT,
began INTEGER,
temp_mdegc INTEGER,
times_shaken INTEGER,
vessel TEXT,
CONSTRAINT pk_rest PRIMARY KEY (seq),
CONSTRAINT ck_rest_entry_kind CHECK (entry_kind = 'rest'),
CONSTRAINT ck_rest_purpose CHECK (purpose IN ('macerate', 'settle', 'chill', 'warm')),
CONSTRAINT ck_rest_began CHECK (began >= 0),
CONSTRAINT ck_rest_ended_at CHECK (length(ended_at) = 20),
CONSTRAINT ck_rest_started_at CHECK (length(started_at) = 20),
CONSTRAINT ck_rest_times_shaken CHECK (times_shaken >= 0),
CONSTRAINT fk_rest_began FOREIGN KEY(began) REFERENCES entry (seq),
CONSTRAINT fk_rest_seq_entry_kind FOREIGN KEY(seq, entry_kind) REFERENCES entry (seq, kind)
)
STRICT;
CREATE TABLE rinse (
seq INTEGER NOT NULL,
entry_kind TEXT NOT NULL,
source TEXT NOT NULL,
volume_in INTEGER NOT NULL,
volume_in_measure TEXT NOT NULL,
volume_in_written TEXT NOT NULL,
volume_out INTEGER NOT NULL,
volume_out_measure TEXT NOT NULL,
volume_out_written TEXT NOT NULL,
went_to TEXT NOT NULL,
CONSTRAINT pk_rinse PRIMARY KEY (seq),
CONSTRAINT ck_rinse_entry_kind CHECK (entry_kind = 'rinse'),
CONSTRAINT ck_rinse_volume_in_measure CHECK (volume_in_measure IN ('uL', 'mg', 'ueach')),
CONSTRAINT ck_rinse_volume_out_measure CHECK (volume_out_measure IN ('uL', 'mg', 'ueach')),
CONSTRAINT ck_rinse_went_to CHECK (went_to IN ('batch', 'apart', 'waste')),
CONSTRAINT ck_rinse_volume_in CHECK (volume_in > 0),
CONSTRAINT ck_rinse_volume_out CHECK (volume_out > 0),
CONSTRAINT fk_rinse_seq_entry_kind FOREIGN KEY(seq, entry_kind) REFERENCES entry (seq, kind),
CONSTRAINT fk_rinse_source FOREIGN KEY(source) REFERENCES lot (code)
)
STRICT;
CREATE TABLE start (
seq INTEGER NOT NULL,
entry_kind TEXT NOT NULL,
product TEXT NOT NULL,
product_kind TEXT NOT NULL,
target INTEGER NOT NULL,
target_measure TEXT NOT NULL,
target_written TEXT NOT NULL,
formula TEXT,
formula_version INTEGER,
purpose TEXT NOT NULL,
trial_group TEXT,
pour_parts INTEGER,
best_before TEXT,
vessel TEXT, is_control INTEGER CONSTRAINT ck_start_is_control CHECK (is_control IN (0, 1)), repeat INTEGER CONSTRAINT ck_start_repeat CHECK (repeat >= 0), planned_by INTEGER CONSTRAINT ck_start_planned_by CHECK (planned_by >= 0), jar INTEGER CONSTRAINT ck_start_jar CHECK (jar >= 0),
CONSTRAINT pk_start PRIMARY KEY (seq),
CONSTRAINT ck_start_entry_kind CHECK (entry_kind = 'start'),
CONSTRAINT ck_start_product_kind CHECK (product_kind IN ('essence', 'washed-essence', 'gum-emulsion', 'blend', 'macerate', 'base-syrup', 'syrup', 'rework')),
CONSTRAINT ck_start_purpose CHECK (purpose IN ('sale', 'trial')),
CONSTRAINT ck_start_target_measure CHECK (target_measure IN ('uL', 'mg', 'ueach')),
CONSTRAINT ck_start_formula_version CHECK (formula_version >= 0),
CONSTRAINT ck_start_best_before CHECK (length(best_before) = 10),
CONSTRAINT ck_start_pour_parts CHECK (pour_parts >= 0),
CONSTRAINT ck_start_target CHECK (target > 0),
CONSTRAINT fk_start_seq_entry_kind FOREIGN KEY(seq, entry_kind) REFERENCES entry (seq, kind)
)
STRICT;
CREATE TABLE start_factors (
seq INTEGER NOT NULL,
line INTEGER NOT NULL,
name TEXT NOT NULL,
planned TEXT NOT NULL,
CONSTRAINT pk_start_factors PRIMARY KEY (seq, line),
CONSTRAINT fk_start_factors_seq FOREIGN KEY(seq) REFERENCES start (seq)
)
WITHOUT ROWID,
STRICT;
CREATE TABLE strike (
seq INTEGER NOT NULL,
entry_kind TEXT NOT NULL,
CONSTRAINT pk_strike PRIMARY KEY (seq),
CONSTRAINT ck_strike_entry_kind CHECK (entry_kind = 'strike'),
CONSTRAINT fk_strike_seq_entry_kind FOREIGN KEY(seq, entry_kind) REFERENCES entry (seq, kind)
)
STRICT;
CREATE TABLE tree (
height INTEGER NOT NULL,
place INTEGER NOT NULL,
hash BLOB NOT NULL,
CONSTRAINT pk_tree PRIMARY KEY (height, place),
CONSTRAINT ck_tree_node CHECK (height > 0 AND length(hash) = 32)
)
WITHOUT ROWID,
STRICT;
CREATE TABLE trial (
seq INTEGER NOT NULL,
entry_kind TEXT NOT NULL,
name TEXT NOT NULL,
number INTEGER NOT NULL,
product TEXT NOT NULL,
product_kind TEXT NOT NULL,
jar INTEGER NOT NULL,
jar_measure TEXT NOT NULL,
jar_written TEXT NOT NULL,
decides TEXT NOT NULL,
worst TEXT NOT NULL,
age TEXT NOT NULL,
level_mpct INTEGER NOT NULL,
fails_mpct INTEGER NOT NULL,
else_mpct INTEGER NOT NULL,
chance_mpct INTEGER NOT NULL,
entries INTEGER NOT NULL,
root TEXT NOT NULL,
formula TEXT,
formula_version INTEGER, draw INTEGER CONSTRAINT ck_trial_draw CHECK (draw >= 0),
CONSTRAINT pk_trial PRIMARY KEY (seq),
CONSTRAINT ck_trial_number CHECK (number >= 0),
CONSTRAINT ck_trial_product_kind CHECK (product_kind IN ('essence', 'washed-essence', 'gum-emulsion', 'blend', 'macerate', 'base-syrup', 'syrup', 'rework')),
CONSTRAINT ck_trial_jar CHECK (jar > 0),
CONSTRAINT ck_trial_jar_measure CHECK (jar_measure IN ('uL', 'mg', 'ueach')),
CONSTRAINT ck_trial_decides CHECK (decides IN ('look', 'ntu')),
CONSTRAINT ck_trial_worst CHECK (worst IN ('bright', 'clear', 'hazy', 'opalescent', 'cloudy', 'milky')),
CONSTRAINT ck_trial_age CHECK (age IN ('1 d', '7 d')),
CONSTRAINT ck_trial_level_mpct CHECK (level_mpct >= 0),
CONSTRAINT ck_trial_fails_mpct CHECK (fails_mpct >= 0),
CONSTRAINT ck_trial_else_mpct CHECK (else_mpct >= 0),
CONSTRAINT ck_trial_chance_mpct CHECK (chance_mpct >= 0),
CONSTRAINT ck_trial_entries CHECK (entries >= 0),
CONSTRAINT ck_trial_formula_version CHECK (formula_version >= 0),
CONSTRAINT fk_trial_seq_entry_kind FOREIGN KEY(seq, entry_kind) REFERENCES entry (seq, kind),
CONSTRAINT ck_trial_entry_kind CHECK (entry_kind = 'trial')
)
STRICT;
CREATE TABLE trial_evenings (
seq INTEGER NOT NULL,
line INTEGER NOT NULL,
jars INTEGER NOT NULL,
CONSTRAINT pk_trial_evenings PRIMARY KEY (seq, line),
CONSTRAINT ck_trial_evenings_jars CHECK (jars >= 0),
CONSTRAINT fk_trial_evenings_seq FOREIGN KEY(seq) REFERENCES trial (seq)
)
WITHOUT ROWID,
STRICT;
CREATE TABLE trial_factors (
seq INTEGER NOT NULL,
line INTEGER NOT NULL,
name TEXT NOT NULL,
usual TEXT NOT NULL,
suspected TEXT NOT NULL,
CONSTRAINT pk_trial_factors PRIMARY KEY (seq, line),
CONSTRAINT fk_trial_factors_seq FOREIGN KEY(seq) REFERENCES trial (seq)
)
WITHOUT ROWID,
STRICT;
CREATE TABLE withdrawal (
seq INTEGER NOT NULL,
entry_kind TEXT NOT NULL,
code TEXT NOT NULL,
version INTEGER NOT NULL,
CONSTRAINT pk_withdrawal PRIMARY KEY (seq),
CONSTRAINT ck_withdrawal_version CHECK (version >= 0),
CONSTRAINT fk_withdrawal_seq_entry_kind FOREIGN KEY(seq, entry_kind) REFERENCES entry (seq, kind),
CONSTRAINT ck_withdrawal_entry_kind CHECK (entry_kind = 'withdrawal')
)
STRICT;
CREATE UNIQUE INDEX ix_entry_correction ON entry (corrects) WHERE corrects IS NOT NULL;
CREATE INDEX ix_entry_lot ON entry (lot);
CREATE INDEX ix_entry_stands_for ON entry (stands_for);
CREATE INDEX ix_level_lot ON level (lot);
CREATE INDEX ix_move_party ON move (party);
CREATE INDEX ix_posting_source ON posting (source, seq, taken);
CREATE INDEX ix_posting_target ON posting (target, seq, given);
CREATE INDEX ix_receipt_material ON receipt (material);
CREATE INDEX ix_receipt_supplier ON receipt (supplier);
CREATE VIEW in_force AS SELECT e.* FROM entry e LEFT JOIN entry c ON c.corrects = e.seq WHERE c.seq IS NULL AND e.kind <> 'strike';
CREATE VIEW last_level AS SELECT lot, amount, happened_at, stands_for FROM ( SELECT l.lot, l.amount, e.happened_at, e.stands_for, ROW_NUMBER() OVER ( PARTITION BY l.lot ORDER BY e.happened_at DESC, e.stands_for DESC) AS nth FROM level l JOIN in_force e ON e.seq = l.seq) AS ranked WHERE nth = 1;
CREATE VIEW lot_status AS SELECT lot.id AS lot, lot.code, CASE WHEN NOT EXISTS (SELECT 1 FROM in_force o WHERE o.stands_for = lot.id) THEN 'struck out' WHEN v.verdict = 'hold' THEN 'on hold' WHEN v.verdict = 'release' AND NOT EXISTS (SELECT 1 FROM reopening r WHERE r.lot = lot.id AND (r.happened_at > v.happened_at OR (r.happened_at = v.happened_at AND r.stands_for > v.stands_for))) THEN 'released' WHEN v.verdict = 'reject' THEN 'rejected' WHEN v.verdict = 'rework' THEN 'to be reworked' WHEN v.verdict = 'recall' THEN 'recalled' WHEN lot.lot_type = 'packed' THEN 'packed' WHEN lot.lot_type <> 'made' THEN 'in stock' WHEN EXISTS (SELECT 1 FROM in_force f WHERE f.lot = lot.id AND f.kind = 'finish' AND NOT EXISTS (SELECT 1 FROM reopening r WHERE r.lot = lot.id AND (r.happened_at > f.happened_at OR (r.happened_at = f.happened_at AND r.stands_for > f.stands_for)))) THEN 'finished' ELSE 'being made' END AS status FROM lot LEFT JOIN verdict v ON v.lot = lot.id;
CREATE VIEW movement AS SELECT p.target AS lot, p.given AS change, e.happened_at, e.stands_for, e.seq FROM posting p JOIN in_force e ON e.seq = p.seq WHERE p.target IS NOT NULL AND p.given > 0 UNION ALL SELECT p.source AS lot, -p.taken AS change, e.happened_at, e.stands_for, e.seq FROM posting p JOIN in_force e ON e.seq = p.seq WHERE p.source IS NOT NULL AND p.taken > 0;
CREATE VIEW on_hand AS SELECT lot.id AS lot, lot.code, lot.measure, CAST(COALESCE(v.amount, 0) + COALESCE(SUM(m.change), 0) AS BIGINT) AS amount FROM lot LEFT JOIN last_level v ON v.lot = lot.id LEFT JOIN movement m ON m.lot = lot.id AND (v.lot IS NULL OR m.happened_at > v.happened_at OR (m.happened_at = v.happened_at AND m.stands_for > v.stands_for)) GROUP BY lot.id, lot.code, lot.measure, v.amount;
CREATE VIEW party_shown AS SELECT stored, shown FROM (SELECT t.code AS stored, d.name AS shown, ROW_NUMBER() OVER (PARTITION BY t.code ORDER BY e.happened_at DESC, e.stands_for DESC) AS nth FROM party t JOIN in_force e ON e.seq = t.seq JOIN details d ON d.seq = t.seq WHERE t.code IS NOT NULL) AS ranked WHERE nth = 1 UNION SELECT n.name AS stored, f.party AS shown FROM forget f JOIN forget_entries x ON x.seq = f.seq JOIN "party" n ON n.seq = x.entry WHERE x.is_kept = 1 AND f.party IS NOT NULL AND n.name IS NOT NULL UNION SELECT n.party AS stored, f.party AS shown FROM forget f JOIN forget_entries x ON x.seq = f.seq JOIN "move" n ON n.seq = x.entry WHERE x.is_kept = 1 AND f.party IS NOT NULL AND n.party IS NOT NULL UNION SELECT n.supplier AS stored, f.party AS shown FROM forget f JOIN forget_entries x ON x.seq = f.seq JOIN "receipt" n ON n.seq = x.entry WHERE x.is_kept = 1 AND f.party IS NOT NULL AND n.supplier IS NOT NULL UNION SELECT n.party AS stored, f.party AS shown FROM forget f JOIN forget_entries x ON x.seq = f.seq JOIN "complaint" n ON n.seq = x.entry WHERE x.is_kept = 1 AND f.party IS NOT NULL AND n.party IS NOT NULL UNION SELECT n.party AS stored, f.party AS shown FROM forget f JOIN forget_entries x ON x.seq = f.seq JOIN "contact" n ON n.seq = x.entry WHERE x.is_kept = 1 AND f.party IS NOT NULL AND n.party IS NOT NULL;
CREATE VIEW reopening AS SELECT e.lot, e.happened_at, e.stands_for FROM in_force e LEFT JOIN rinse r ON r.seq = e.seq WHERE e.kind IN ('add', 'makeup') OR r.went_to = 'batch';
CREATE VIEW v_entries AS SELECT e.seq AS entry, e.kind, l.code AS lot, CASE WHEN e.precision = 'day' THEN substr(datetime(e.happened_at, e.offset_min || ' minutes'), 1, 10) ELSE substr(datetime(e.happened_at, e.offset_min || ' minutes'), 1, 16) END AS happened, e.precision AS known, e.recorded_at AS recorded_utc, e."by" AS made_by, e.origin, e.sheet, e.reason, e.corrects, c.seq AS corrected_by, CASE WHEN c.seq IS NULL THEN 'in force' WHEN c.kind = 'strike' THEN 'struck' ELSE 'corrected' END AS standing FROM entry e LEFT JOIN entry c ON c.corrects = e.seq LEFT JOIN lot l ON l.id = e.lot;
CREATE VIEW v_looks AS SELECT v.entry, v.lot, v.happened, k.grade, k.looked_at, k.dilution, k.ntu_milli / 1000.0 AS ntu, k.instrument, k.age_minutes / 60.0 AS age_h, k.temp_mdegc / 1000.0 AS temp_c, k.ring, k.louche, k.sediment, k.floc, k.crystals, k.words, v.made_by, v.standing FROM look k JOIN v_entries v ON v.entry = k.seq;
CREATE VIEW v_money AS SELECT entry, lot, happened, material, 'cost' AS what, cost AS amount, currency, cost / amount_ml AS per_ml, cost / amount_g AS per_g, cost / amount_each AS per_each, standing FROM v_receipts WHERE cost IS NOT NULL UNION ALL SELECT entry, lot, happened, material, 'duty' AS what, duty AS amount, currency, duty / amount_ml AS per_ml, duty / amount_g AS per_g, duty / amount_each AS per_each, standing FROM v_receipts WHERE duty IS NOT NULL;
CREATE VIEW v_moves AS SELECT v.entry, v.kind, v.happened, s.code AS from_lot, t.code AS to_lot, p.place AS outside, CASE WHEN COALESCE(s.measure, t.measure) = 'uL' THEN p.taken / 1000.0 END AS taken_ml, CASE WHEN COALESCE(s.measure, t.measure) = 'mg' THEN p.taken / 1000.0 END AS taken_g, CASE WHEN COALESCE(s.measure, t.measure) = 'ueach' THEN p.taken / 1000000.0 END AS taken_each, CASE WHEN COALESCE(t.measure, s.measure) = 'uL' THEN p.given / 1000.0 END AS given_ml, CASE WHEN COALESCE(t.measure, s.measure) = 'mg' THEN p.given / 1000.0 END AS given_g, CASE WHEN COALESCE(t.measure, s.measure) = 'ueach' THEN p.given / 1000000.0 END AS given_each, COALESCE(n.shown, m.party) AS party, m.document, v.made_by, v.standing FROM posting p JOIN v_entries v ON v.entry = p.seq LEFT JOIN lot s ON s.id = p.source LEFT JOIN lot t ON t.id = p.target LEFT JOIN move m ON m.seq = p.seq LEFT JOIN party_shown n ON n.stored = m.party;
CREATE VIEW v_receipts AS SELECT v.entry, v.lot, v.happened, r.material, CASE WHEN r.amount_measure = 'uL' THEN r.amount / 1000.0 END AS amount_ml, CASE WHEN r.amount_measure = 'mg' THEN r.amount / 1000.0 END AS amount_g, CASE WHEN r.amount_measure = 'ueach' THEN r.amount / 1000000.0 END AS amount_each, COALESCE(n.shown, r.supplier) AS supplier, r.supplier_lot, r.cost_minor / CASE COALESCE(r.cost_digits, 2) WHEN 0 THEN 1.0 WHEN 1 THEN 10.0 WHEN 2 THEN 100.0 WHEN 3 THEN 1000.0 ELSE 10000.0 END AS cost, r.duty_minor / CASE COALESCE(r.cost_digits, 2) WHEN 0 THEN 1.0 WHEN 1 THEN 10.0 WHEN 2 THEN 100.0 WHEN 3 THEN 1000.0 ELSE 10000.0 END AS duty, (SELECT h.currency FROM house h JOIN in_force e ON e.seq = h.seq ORDER BY e.happened_at DESC, e.stands_for DESC LIMIT 1) AS currency, r.best_before, r.certificate, r.document, r.density_mg_per_l / 1000000.0 AS density_g_per_ml, r.abv_mpct / 1000.0 AS strength_vol_pct, v.made_by, v.standing FROM receipt r JOIN v_entries v ON v.entry = r.seq LEFT JOIN party_shown n ON n.stored = r.supplier;
CREATE VIEW v_stock AS SELECT h.code AS lot, COALESCE(r.material, s.product, bs.product, CASE WHEN l.lot_type = 'rinse' THEN 'rinse liquor' END) AS what, l.lot_type, st.status, CASE WHEN h.measure = 'uL' THEN h.amount / 1000.0 END AS on_hand_ml, CASE WHEN h.measure = 'mg' THEN h.amount / 1000.0 END AS on_hand_g, CASE WHEN h.measure = 'ueach' THEN h.amount / 1000000.0 END AS on_hand_each, b.size / 1000.0 AS bottle_ml, COALESCE(r.best_before, b.best_before, s.best_before) AS best_before_given, COALESCE(n.shown, r.supplier) AS supplier, r.supplier_lot FROM on_hand h JOIN lot l ON l.id = h.lot JOIN lot_status st ON st.lot = h.lot LEFT JOIN in_force o ON o.stands_for = h.lot LEFT JOIN receipt r ON r.seq = o.seq LEFT JOIN "start" s ON s.seq = o.seq LEFT JOIN bottle b ON b.seq = o.seq LEFT JOIN lot bl ON bl.code = b.source LEFT JOIN in_force bo ON bo.stands_for = bl.id LEFT JOIN "start" bs ON bs.seq = bo.seq LEFT JOIN party_shown n ON n.stored = r.supplier;
CREATE VIEW verdict AS SELECT lot, verdict, happened_at, stands_for FROM ( SELECT e.lot, j.verdict, e.happened_at, e.stands_for, ROW_NUMBER() OVER ( PARTITION BY e.lot ORDER BY e.happened_at DESC, e.stands_for DESC) AS nth FROM judge j JOIN in_force e ON e.seq = j.seq) AS ranked WHERE nth = 1;
CREATE TRIGGER guard_add_delete BEFORE DELETE ON "add" BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_add_insert BEFORE INSERT ON "add" WHEN EXISTS (SELECT 1 FROM "add" WHERE ("seq" = NEW."seq")) BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_add_order BEFORE INSERT ON "add" WHEN NEW.seq IS NOT (SELECT MAX(seq) FROM entry) BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_add_update BEFORE UPDATE ON "add" BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_alembic_version_order BEFORE INSERT ON "alembic_version" WHEN true BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_answer_delete BEFORE DELETE ON "answer" BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_answer_insert BEFORE INSERT ON "answer" WHEN EXISTS (SELECT 1 FROM "answer" WHERE ("seq" = NEW."seq")) BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_answer_order BEFORE INSERT ON "answer" WHEN NEW.seq IS NOT (SELECT MAX(seq) FROM entry) BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_answer_update BEFORE UPDATE ON "answer" BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_bottle_delete BEFORE DELETE ON "bottle" BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_bottle_insert BEFORE INSERT ON "bottle" WHEN EXISTS (SELECT 1 FROM "bottle" WHERE ("seq" = NEW."seq")) BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_bottle_order BEFORE INSERT ON "bottle" WHEN NEW.seq IS NOT (SELECT MAX(seq) FROM entry) BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_bottle_update BEFORE UPDATE ON "bottle" BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_cases_delete BEFORE DELETE ON "cases" BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_cases_insert BEFORE INSERT ON "cases" WHEN EXISTS (SELECT 1 FROM "cases" WHERE ("seq" = NEW."seq")) BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_cases_order BEFORE INSERT ON "cases" WHEN NEW.seq IS NOT (SELECT MAX(seq) FROM entry) BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_cases_update BEFORE UPDATE ON "cases" BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_check_delete BEFORE DELETE ON "check" BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_check_insert BEFORE INSERT ON "check" WHEN EXISTS (SELECT 1 FROM "check" WHERE ("seq" = NEW."seq")) BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_check_order BEFORE INSERT ON "check" WHEN NEW.seq IS NOT (SELECT MAX(seq) FROM entry) BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_check_update BEFORE UPDATE ON "check" BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_clean_delete BEFORE DELETE ON "clean" BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_clean_insert BEFORE INSERT ON "clean" WHEN EXISTS (SELECT 1 FROM "clean" WHERE ("seq" = NEW."seq")) BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_clean_order BEFORE INSERT ON "clean" WHEN NEW.seq IS NOT (SELECT MAX(seq) FROM entry) BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_clean_update BEFORE UPDATE ON "clean" BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_closing_delete BEFORE DELETE ON "closing" BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_closing_insert BEFORE INSERT ON "closing" WHEN EXISTS (SELECT 1 FROM "closing" WHERE ("seq" = NEW."seq")) BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_closing_order BEFORE INSERT ON "closing" WHEN NEW.seq IS NOT (SELECT MAX(seq) FROM entry) BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_closing_update BEFORE UPDATE ON "closing" BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_complaint_delete BEFORE DELETE ON "complaint" BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_complaint_insert BEFORE INSERT ON "complaint" WHEN EXISTS (SELECT 1 FROM "complaint" WHERE ("seq" = NEW."seq")) BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_complaint_order BEFORE INSERT ON "complaint" WHEN NEW.seq IS NOT (SELECT MAX(seq) FROM entry) BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_complaint_update BEFORE UPDATE ON "complaint" BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_contact_delete BEFORE DELETE ON "contact" BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_contact_insert BEFORE INSERT ON "contact" WHEN EXISTS (SELECT 1 FROM "contact" WHERE ("seq" = NEW."seq")) BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_contact_order BEFORE INSERT ON "contact" WHEN NEW.seq IS NOT (SELECT MAX(seq) FROM entry) BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_contact_update BEFORE UPDATE ON "contact" BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_count_delete BEFORE DELETE ON "count" BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_count_insert BEFORE INSERT ON "count" WHEN EXISTS (SELECT 1 FROM "count" WHERE ("seq" = NEW."seq")) BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_count_order BEFORE INSERT ON "count" WHEN NEW.seq IS NOT (SELECT MAX(seq) FROM entry) BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_count_update BEFORE UPDATE ON "count" BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_decant_delete BEFORE DELETE ON "decant" BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_decant_insert BEFORE INSERT ON "decant" WHEN EXISTS (SELECT 1 FROM "decant" WHERE ("seq" = NEW."seq")) BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_decant_order BEFORE INSERT ON "decant" WHEN NEW.seq IS NOT (SELECT MAX(seq) FROM entry) BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_decant_update BEFORE UPDATE ON "decant" BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_details_delete BEFORE DELETE ON "details" WHEN NOT EXISTS (SELECT 1 FROM forget_entries WHERE entry = OLD.seq AND is_kept = 0) BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_details_insert BEFORE INSERT ON "details" WHEN EXISTS (SELECT 1 FROM "details" WHERE ("seq" = NEW."seq")) BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_details_order BEFORE INSERT ON "details" WHEN NEW.seq IS NOT (SELECT MAX(seq) FROM entry) BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_details_update BEFORE UPDATE ON "details" BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_deviation_delete BEFORE DELETE ON "deviation" BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_deviation_insert BEFORE INSERT ON "deviation" WHEN EXISTS (SELECT 1 FROM "deviation" WHERE ("seq" = NEW."seq")) BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_deviation_order BEFORE INSERT ON "deviation" WHEN NEW.seq IS NOT (SELECT MAX(seq) FROM entry) BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_deviation_update BEFORE UPDATE ON "deviation" BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_entry_clock BEFORE INSERT ON "entry" WHEN NEW.reason IS NULL AND NEW.recorded_at < (SELECT strftime('%Y-%m-%dT%H:%M:%SZ', recorded_at, '-1 hour') FROM entry WHERE seq = NEW.seq - 1) BEGIN SELECT RAISE(ABORT, 'The book records nothing an hour before its last entry without a reason.'); END;
CREATE TRIGGER guard_entry_delete BEFORE DELETE ON "entry" BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_entry_insert BEFORE INSERT ON "entry" WHEN EXISTS (SELECT 1 FROM "entry" WHERE ("corrects" = NEW."corrects") OR ("seq" = NEW."seq")) BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_entry_order BEFORE INSERT ON "entry" WHEN NEW.seq IS NOT COALESCE((SELECT MAX(seq) FROM entry), 0) + 1 BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_entry_update BEFORE UPDATE ON "entry" BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_equipment_delete BEFORE DELETE ON "equipment" BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_equipment_insert BEFORE INSERT ON "equipment" WHEN EXISTS (SELECT 1 FROM "equipment" WHERE ("seq" = NEW."seq")) BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_equipment_order BEFORE INSERT ON "equipment" WHEN NEW.seq IS NOT (SELECT MAX(seq) FROM entry) BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_equipment_update BEFORE UPDATE ON "equipment" BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_filter_delete BEFORE DELETE ON "filter" BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_filter_insert BEFORE INSERT ON "filter" WHEN EXISTS (SELECT 1 FROM "filter" WHERE ("seq" = NEW."seq")) BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_filter_order BEFORE INSERT ON "filter" WHEN NEW.seq IS NOT (SELECT MAX(seq) FROM entry) BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_filter_update BEFORE UPDATE ON "filter" BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_finish_delete BEFORE DELETE ON "finish" BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_finish_insert BEFORE INSERT ON "finish" WHEN EXISTS (SELECT 1 FROM "finish" WHERE ("seq" = NEW."seq")) BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_finish_order BEFORE INSERT ON "finish" WHEN NEW.seq IS NOT (SELECT MAX(seq) FROM entry) BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_finish_update BEFORE UPDATE ON "finish" BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_forecast_delete BEFORE DELETE ON "forecast" BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_forecast_insert BEFORE INSERT ON "forecast" WHEN EXISTS (SELECT 1 FROM "forecast" WHERE ("seq" = NEW."seq")) BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_forecast_order BEFORE INSERT ON "forecast" WHEN NEW.seq IS NOT (SELECT MAX(seq) FROM entry) BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_forecast_update BEFORE UPDATE ON "forecast" BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_forget_delete BEFORE DELETE ON "forget" BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_forget_entries_delete BEFORE DELETE ON "forget_entries" BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_forget_entries_insert BEFORE INSERT ON "forget_entries" WHEN EXISTS (SELECT 1 FROM "forget_entries" WHERE ("seq" = NEW."seq" AND "line" = NEW."line")) BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_forget_entries_order BEFORE INSERT ON "forget_entries" WHEN NEW.seq IS NOT (SELECT MAX(seq) FROM entry) BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_forget_entries_update BEFORE UPDATE ON "forget_entries" BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_forget_insert BEFORE INSERT ON "forget" WHEN EXISTS (SELECT 1 FROM "forget" WHERE ("seq" = NEW."seq")) BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_forget_order BEFORE INSERT ON "forget" WHEN NEW.seq IS NOT (SELECT MAX(seq) FROM entry) BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_forget_update BEFORE UPDATE ON "forget" BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_formula_delete BEFORE DELETE ON "formula" BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_formula_insert BEFORE INSERT ON "formula" WHEN EXISTS (SELECT 1 FROM "formula" WHERE ("seq" = NEW."seq")) BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_formula_keeping_delete BEFORE DELETE ON "formula_keeping" BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_formula_keeping_insert BEFORE INSERT ON "formula_keeping" WHEN EXISTS (SELECT 1 FROM "formula_keeping" WHERE ("seq" = NEW."seq" AND "line" = NEW."line")) BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_formula_keeping_order BEFORE INSERT ON "formula_keeping" WHEN NEW.seq IS NOT (SELECT MAX(seq) FROM entry) BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_formula_keeping_update BEFORE UPDATE ON "formula_keeping" BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_formula_lines_delete BEFORE DELETE ON "formula_lines" BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_formula_lines_insert BEFORE INSERT ON "formula_lines" WHEN EXISTS (SELECT 1 FROM "formula_lines" WHERE ("seq" = NEW."seq" AND "line" = NEW."line")) BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_formula_lines_order BEFORE INSERT ON "formula_lines" WHEN NEW.seq IS NOT (SELECT MAX(seq) FROM entry) BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_formula_lines_update BEFORE UPDATE ON "formula_lines" BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_formula_order BEFORE INSERT ON "formula" WHEN NEW.seq IS NOT (SELECT MAX(seq) FROM entry) BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_formula_steps_delete BEFORE DELETE ON "formula_steps" BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_formula_steps_insert BEFORE INSERT ON "formula_steps" WHEN EXISTS (SELECT 1 FROM "formula_steps" WHERE ("seq" = NEW."seq" AND "line" = NEW."line")) BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_formula_steps_order BEFORE INSERT ON "formula_steps" WHEN NEW.seq IS NOT (SELECT MAX(seq) FROM entry) BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_formula_steps_update BEFORE UPDATE ON "formula_steps" BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_formula_update BEFORE UPDATE ON "formula" BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_house_articles_delete BEFORE DELETE ON "house_articles" BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_house_articles_insert BEFORE INSERT ON "house_articles" WHEN EXISTS (SELECT 1 FROM "house_articles" WHERE ("seq" = NEW."seq" AND "line" = NEW."line")) BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_house_articles_order BEFORE INSERT ON "house_articles" WHEN NEW.seq IS NOT (SELECT MAX(seq) FROM entry) BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_house_articles_update BEFORE UPDATE ON "house_articles" BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_house_delete BEFORE DELETE ON "house" BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_house_insert BEFORE INSERT ON "house" WHEN EXISTS (SELECT 1 FROM "house" WHERE ("seq" = NEW."seq")) BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_house_order BEFORE INSERT ON "house" WHEN NEW.seq IS NOT (SELECT MAX(seq) FROM entry) BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_house_update BEFORE UPDATE ON "house" BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_judge_delete BEFORE DELETE ON "judge" BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_judge_insert BEFORE INSERT ON "judge" WHEN EXISTS (SELECT 1 FROM "judge" WHERE ("seq" = NEW."seq")) BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_judge_order BEFORE INSERT ON "judge" WHEN NEW.seq IS NOT (SELECT MAX(seq) FROM entry) BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_judge_update BEFORE UPDATE ON "judge" BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_labels_delete BEFORE DELETE ON "labels" BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_labels_insert BEFORE INSERT ON "labels" WHEN EXISTS (SELECT 1 FROM "labels" WHERE ("seq" = NEW."seq")) BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_labels_order BEFORE INSERT ON "labels" WHEN NEW.seq IS NOT (SELECT MAX(seq) FROM entry) BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_labels_update BEFORE UPDATE ON "labels" BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_level_delete BEFORE DELETE ON "level" BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_level_insert BEFORE INSERT ON "level" WHEN EXISTS (SELECT 1 FROM "level" WHERE ("seq" = NEW."seq")) BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_level_order BEFORE INSERT ON "level" WHEN NEW.seq IS NOT (SELECT MAX(seq) FROM entry) BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_level_update BEFORE UPDATE ON "level" BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_limit_delete BEFORE DELETE ON "limit" BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_limit_insert BEFORE INSERT ON "limit" WHEN EXISTS (SELECT 1 FROM "limit" WHERE ("seq" = NEW."seq")) BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_limit_order BEFORE INSERT ON "limit" WHEN NEW.seq IS NOT (SELECT MAX(seq) FROM entry) BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_limit_update BEFORE UPDATE ON "limit" BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_look_delete BEFORE DELETE ON "look" BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_look_insert BEFORE INSERT ON "look" WHEN EXISTS (SELECT 1 FROM "look" WHERE ("seq" = NEW."seq")) BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_look_order BEFORE INSERT ON "look" WHEN NEW.seq IS NOT (SELECT MAX(seq) FROM entry) BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_look_update BEFORE UPDATE ON "look" BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_lot_delete BEFORE DELETE ON "lot" BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_lot_insert BEFORE INSERT ON "lot" WHEN EXISTS (SELECT 1 FROM "lot" WHERE ("code" = NEW."code") OR ("id" = NEW."id")) BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_lot_order BEFORE INSERT ON "lot" WHEN NEW.id IS NOT COALESCE((SELECT MAX(seq) FROM entry), 0) + 1 BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_lot_update BEFORE UPDATE ON "lot" BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_makeup_delete BEFORE DELETE ON "makeup" BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_makeup_insert BEFORE INSERT ON "makeup" WHEN EXISTS (SELECT 1 FROM "makeup" WHERE ("seq" = NEW."seq")) BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_makeup_order BEFORE INSERT ON "makeup" WHEN NEW.seq IS NOT (SELECT MAX(seq) FROM entry) BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_makeup_update BEFORE UPDATE ON "makeup" BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_material_constituents_delete BEFORE DELETE ON "material_constituents" BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_material_constituents_insert BEFORE INSERT ON "material_constituents" WHEN EXISTS (SELECT 1 FROM "material_constituents" WHERE ("seq" = NEW."seq" AND "line" = NEW."line")) BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_material_constituents_order BEFORE INSERT ON "material_constituents" WHEN NEW.seq IS NOT (SELECT MAX(seq) FROM entry) BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_material_constituents_update BEFORE UPDATE ON "material_constituents" BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_material_delete BEFORE DELETE ON "material" BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_material_insert BEFORE INSERT ON "material" WHEN EXISTS (SELECT 1 FROM "material" WHERE ("seq" = NEW."seq")) BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_material_key_delete BEFORE DELETE ON "material_key" BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_material_key_insert BEFORE INSERT ON "material_key" WHEN EXISTS (SELECT 1 FROM "material_key" WHERE ("code" = NEW."code") OR ("seq" = NEW."seq")) BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_material_key_order BEFORE INSERT ON "material_key" WHEN NEW.seq IS NOT COALESCE((SELECT MAX(seq) FROM entry), 0) + 1 BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_material_key_update BEFORE UPDATE ON "material_key" BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_material_names_delete BEFORE DELETE ON "material_names" BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_material_names_insert BEFORE INSERT ON "material_names" WHEN EXISTS (SELECT 1 FROM "material_names" WHERE ("seq" = NEW."seq" AND "line" = NEW."line")) BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_material_names_order BEFORE INSERT ON "material_names" WHEN NEW.seq IS NOT (SELECT MAX(seq) FROM entry) BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_material_names_update BEFORE UPDATE ON "material_names" BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_material_order BEFORE INSERT ON "material" WHEN NEW.seq IS NOT (SELECT MAX(seq) FROM entry) BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_material_update BEFORE UPDATE ON "material" BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_measure_delete BEFORE DELETE ON "measure" BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_measure_insert BEFORE INSERT ON "measure" WHEN EXISTS (SELECT 1 FROM "measure" WHERE ("seq" = NEW."seq")) BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_measure_order BEFORE INSERT ON "measure" WHEN NEW.seq IS NOT (SELECT MAX(seq) FROM entry) BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_measure_update BEFORE UPDATE ON "measure" BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_move_delete BEFORE DELETE ON "move" BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_move_insert BEFORE INSERT ON "move" WHEN EXISTS (SELECT 1 FROM "move" WHERE ("seq" = NEW."seq")) BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_move_order BEFORE INSERT ON "move" WHEN NEW.seq IS NOT (SELECT MAX(seq) FROM entry) BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_move_update BEFORE UPDATE ON "move" BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_note_delete BEFORE DELETE ON "note" BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_note_insert BEFORE INSERT ON "note" WHEN EXISTS (SELECT 1 FROM "note" WHERE ("seq" = NEW."seq")) BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_note_order BEFORE INSERT ON "note" WHEN NEW.seq IS NOT (SELECT MAX(seq) FROM entry) BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_note_update BEFORE UPDATE ON "note" BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_party_delete BEFORE DELETE ON "party" BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_party_insert BEFORE INSERT ON "party" WHEN EXISTS (SELECT 1 FROM "party" WHERE ("seq" = NEW."seq")) BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_party_order BEFORE INSERT ON "party" WHEN NEW.seq IS NOT (SELECT MAX(seq) FROM entry) BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_party_update BEFORE UPDATE ON "party" BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_person_delete BEFORE DELETE ON "person" BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_person_insert BEFORE INSERT ON "person" WHEN EXISTS (SELECT 1 FROM "person" WHERE ("seq" = NEW."seq")) BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_person_key_delete BEFORE DELETE ON "person_key" BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_person_key_insert BEFORE INSERT ON "person_key" WHEN EXISTS (SELECT 1 FROM "person_key" WHERE ("initials" = NEW."initials") OR ("seq" = NEW."seq")) BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_person_key_order BEFORE INSERT ON "person_key" WHEN NEW.seq IS NOT COALESCE((SELECT MAX(seq) FROM entry), 0) + 1 BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_person_key_update BEFORE UPDATE ON "person_key" BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_person_order BEFORE INSERT ON "person" WHEN NEW.seq IS NOT (SELECT MAX(seq) FROM entry) BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_person_update BEFORE UPDATE ON "person" BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_posting_delete BEFORE DELETE ON "posting" BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_posting_insert BEFORE INSERT ON "posting" WHEN EXISTS (SELECT 1 FROM "posting" WHERE ("seq" = NEW."seq" AND "line" = NEW."line")) BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_posting_order BEFORE INSERT ON "posting" WHEN NEW.seq IS NOT (SELECT MAX(seq) FROM entry) BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_posting_update BEFORE UPDATE ON "posting" BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_receipt_delete BEFORE DELETE ON "receipt" BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_receipt_insert BEFORE INSERT ON "receipt" WHEN EXISTS (SELECT 1 FROM "receipt" WHERE ("seq" = NEW."seq")) BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_receipt_order BEFORE INSERT ON "receipt" WHEN NEW.seq IS NOT (SELECT MAX(seq) FROM entry) BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_receipt_update BEFORE UPDATE ON "receipt" BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_rest_delete BEFORE DELETE ON "rest" BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_rest_insert BEFORE INSERT ON "rest" WHEN EXISTS (SELECT 1 FROM "rest" WHERE ("seq" = NEW."seq")) BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_rest_order BEFORE INSERT ON "rest" WHEN NEW.seq IS NOT (SELECT MAX(seq) FROM entry) BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_rest_update BEFORE UPDATE ON "rest" BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_rinse_delete BEFORE DELETE ON "rinse" BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_rinse_insert BEFORE INSERT ON "rinse" WHEN EXISTS (SELECT 1 FROM "rinse" WHERE ("seq" = NEW."seq")) BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_rinse_order BEFORE INSERT ON "rinse" WHEN NEW.seq IS NOT (SELECT MAX(seq) FROM entry) BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_rinse_update BEFORE UPDATE ON "rinse" BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_start_delete BEFORE DELETE ON "start" BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_start_factors_delete BEFORE DELETE ON "start_factors" BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_start_factors_insert BEFORE INSERT ON "start_factors" WHEN EXISTS (SELECT 1 FROM "start_factors" WHERE ("seq" = NEW."seq" AND "line" = NEW."line")) BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_start_factors_order BEFORE INSERT ON "start_factors" WHEN NEW.seq IS NOT (SELECT MAX(seq) FROM entry) BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_start_factors_update BEFORE UPDATE ON "start_factors" BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_start_insert BEFORE INSERT ON "start" WHEN EXISTS (SELECT 1 FROM "start" WHERE ("seq" = NEW."seq")) BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_start_order BEFORE INSERT ON "start" WHEN NEW.seq IS NOT (SELECT MAX(seq) FROM entry) BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_start_update BEFORE UPDATE ON "start" BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_strike_delete BEFORE DELETE ON "strike" BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_strike_insert BEFORE INSERT ON "strike" WHEN EXISTS (SELECT 1 FROM "strike" WHERE ("seq" = NEW."seq")) BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_strike_order BEFORE INSERT ON "strike" WHEN NEW.seq IS NOT (SELECT MAX(seq) FROM entry) BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_strike_update BEFORE UPDATE ON "strike" BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_tree_delete BEFORE DELETE ON "tree" BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_tree_insert BEFORE INSERT ON "tree" WHEN EXISTS (SELECT 1 FROM "tree" WHERE ("height" = NEW."height" AND "place" = NEW."place")) BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_tree_order BEFORE INSERT ON "tree" WHEN ((NEW.place + 1) << NEW.height) IS NOT (SELECT MAX(seq) FROM entry) BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_tree_update BEFORE UPDATE ON "tree" BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_trial_delete BEFORE DELETE ON "trial" BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_trial_evenings_delete BEFORE DELETE ON "trial_evenings" BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_trial_evenings_insert BEFORE INSERT ON "trial_evenings" WHEN EXISTS (SELECT 1 FROM "trial_evenings" WHERE ("seq" = NEW."seq" AND "line" = NEW."line")) BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_trial_evenings_order BEFORE INSERT ON "trial_evenings" WHEN NEW.seq IS NOT (SELECT MAX(seq) FROM entry) BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_trial_evenings_update BEFORE UPDATE ON "trial_evenings" BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_trial_factors_delete BEFORE DELETE ON "trial_factors" BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_trial_factors_insert BEFORE INSERT ON "trial_factors" WHEN EXISTS (SELECT 1 FROM "trial_factors" WHERE ("seq" = NEW."seq" AND "line" = NEW."line")) BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_trial_factors_order BEFORE INSERT ON "trial_factors" WHEN NEW.seq IS NOT (SELECT MAX(seq) FROM entry) BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_trial_factors_update BEFORE UPDATE ON "trial_factors" BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_trial_insert BEFORE INSERT ON "trial" WHEN EXISTS (SELECT 1 FROM "trial" WHERE ("seq" = NEW."seq")) BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_trial_order BEFORE INSERT ON "trial" WHEN NEW.seq IS NOT (SELECT MAX(seq) FROM entry) BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_trial_update BEFORE UPDATE ON "trial" BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_withdrawal_delete BEFORE DELETE ON "withdrawal" BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_withdrawal_insert BEFORE INSERT ON "withdrawal" WHEN EXISTS (SELECT 1 FROM "withdrawal" WHERE ("seq" = NEW."seq")) BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_withdrawal_order BEFORE INSERT ON "withdrawal" WHEN NEW.seq IS NOT (SELECT MAX(seq) FROM entry) BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
CREATE TRIGGER guard_withdrawal_update BEFORE UPDATE ON "withdrawal" BEGIN SELECT RAISE(ABORT, 'The book is only ever added to.'); END;
