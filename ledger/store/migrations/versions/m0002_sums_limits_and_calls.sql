CREATE TABLE party (
	seq INTEGER NOT NULL,
	entry_kind TEXT NOT NULL,
	name TEXT NOT NULL,
	phone TEXT,
	email TEXT,
	address TEXT,
	words TEXT,
	CONSTRAINT pk_party PRIMARY KEY (seq),
	CONSTRAINT fk_party_seq_entry_kind FOREIGN KEY(seq, entry_kind) REFERENCES entry (seq, kind),
	CONSTRAINT ck_party_entry_kind CHECK (entry_kind = 'party')
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
	CONSTRAINT ck_contact_still_there CHECK (still_there > 0),
	CONSTRAINT ck_contact_still_there_measure CHECK (still_there_measure IN ('uL', 'mg', 'ueach')),
	CONSTRAINT fk_contact_seq_entry_kind FOREIGN KEY(seq, entry_kind) REFERENCES entry (seq, kind),
	CONSTRAINT ck_contact_entry_kind CHECK (entry_kind = 'contact')
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
ALTER TABLE bottle ADD COLUMN labour_minutes INTEGER CONSTRAINT ck_bottle_labour_minutes CHECK (labour_minutes >= 0);
ALTER TABLE complaint ADD COLUMN photo TEXT;
ALTER TABLE filter ADD COLUMN in_cake INTEGER CONSTRAINT ck_filter_in_cake CHECK (in_cake > 0);
ALTER TABLE filter ADD COLUMN in_cake_measure TEXT CONSTRAINT ck_filter_in_cake_measure CHECK (in_cake_measure IN ('uL', 'mg', 'ueach'));
ALTER TABLE filter ADD COLUMN in_cake_written TEXT;
ALTER TABLE finish ADD COLUMN waste INTEGER CONSTRAINT ck_finish_waste CHECK (waste > 0);
ALTER TABLE finish ADD COLUMN waste_measure TEXT CONSTRAINT ck_finish_waste_measure CHECK (waste_measure IN ('uL', 'mg', 'ueach'));
ALTER TABLE finish ADD COLUMN waste_written TEXT;
ALTER TABLE finish ADD COLUMN labour_minutes INTEGER CONSTRAINT ck_finish_labour_minutes CHECK (labour_minutes >= 0);
ALTER TABLE formula ADD COLUMN abv_min_mpct INTEGER CONSTRAINT ck_formula_abv_min_mpct CHECK (abv_min_mpct >= 0);
ALTER TABLE formula ADD COLUMN abv_max_mpct INTEGER CONSTRAINT ck_formula_abv_max_mpct CHECK (abv_max_mpct >= 0);
ALTER TABLE formula ADD COLUMN claim TEXT;
ALTER TABLE formula_steps ADD COLUMN rest_for TEXT CONSTRAINT ck_formula_steps_rest_for CHECK (rest_for IN ('macerate', 'settle', 'chill'));
ALTER TABLE formula_steps ADD COLUMN precoat_min INTEGER CONSTRAINT ck_formula_steps_precoat_min CHECK (precoat_min > 0);
ALTER TABLE formula_steps ADD COLUMN precoat_min_measure TEXT CONSTRAINT ck_formula_steps_precoat_min_measure CHECK (precoat_min_measure IN ('uL', 'mg', 'ueach'));
ALTER TABLE formula_steps ADD COLUMN precoat_min_written TEXT;
ALTER TABLE formula_steps ADD COLUMN looked_at TEXT CONSTRAINT ck_formula_steps_looked_at CHECK (looked_at IN ('neat', 'in-syrup', 'as-poured'));
ALTER TABLE formula_steps ADD COLUMN dilution TEXT;
ALTER TABLE formula_steps ADD COLUMN worst TEXT CONSTRAINT ck_formula_steps_worst CHECK (worst IN ('bright', 'clear', 'hazy', 'opalescent', 'cloudy', 'milky'));
ALTER TABLE formula_steps ADD COLUMN age_minutes INTEGER CONSTRAINT ck_formula_steps_age_minutes CHECK (age_minutes >= 0);
ALTER TABLE house ADD COLUMN hour_minor INTEGER CONSTRAINT ck_house_hour_minor CHECK (hour_minor >= 0);
ALTER TABLE house ADD COLUMN phone TEXT;
ALTER TABLE receipt ADD COLUMN duty_minor INTEGER CONSTRAINT ck_receipt_duty_minor CHECK (duty_minor >= 0);
ALTER TABLE receipt ADD COLUMN document TEXT;
ALTER TABLE start ADD COLUMN is_control INTEGER CONSTRAINT ck_start_is_control CHECK (is_control IN (0, 1));
ALTER TABLE start ADD COLUMN repeat INTEGER CONSTRAINT ck_start_repeat CHECK (repeat >= 0);
