PRAGMA application_id = 1349481580;
PRAGMA user_version = 8;
BEGIN TRANSACTION;
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
INSERT INTO "add" VALUES(16,'add','SOO-001-3',25000,'mg','25g','ingredient',NULL,NULL,NULL,NULL);
INSERT INTO "add" VALUES(17,'add','LMC-001-F',15000,'mg','15g','ingredient',NULL,NULL,NULL,NULL);
INSERT INTO "add" VALUES(18,'add','NS-001-J',420000,'uL','420mL','ingredient',NULL,NULL,NULL,NULL);
INSERT INTO "add" VALUES(27,'add','SGR-002-J',2400000,'mg','2.4kg','ingredient',NULL,NULL,NULL,NULL);
INSERT INTO "add" VALUES(28,'add','WTR-002-Y',2400000,'uL','2.4L','ingredient',NULL,NULL,NULL,NULL);
INSERT INTO "add" VALUES(29,'add','OE-001-5',30000,'uL','30mL','ingredient',NULL,NULL,NULL,NULL);
INSERT INTO "add" VALUES(36,'add','SOO-001-3',26000,'mg','26g','ingredient',NULL,NULL,NULL,NULL);
INSERT INTO "add" VALUES(38,'add','NS-001-J',200000,'uL','200mL','ingredient',NULL,NULL,NULL,NULL);
INSERT INTO "add" VALUES(58,'add','SOO-001-3',2000000,'uL','2L','ingredient',NULL,NULL,NULL,NULL);
CREATE TABLE alembic_version (
version_num VARCHAR(32) NOT NULL,
CONSTRAINT alembic_version_pkc PRIMARY KEY (version_num)
);
INSERT INTO "alembic_version" VALUES('0008');
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
INSERT INTO "answer" VALUES(72,'answer',35,'replaced','AB','2026-03-04',NULL,'two fresh bottles');
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
INSERT INTO "bottle" VALUES(32,'bottle','OS-002-M',15,250000,'uL','250mL',3750000,'uL','3.75 L','LOT-001-X',NULL,NULL,NULL,NULL,NULL,NULL);
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
INSERT INTO "cases" VALUES(52,'cases',1,2,1,NULL);
INSERT INTO "cases" VALUES(55,'cases',2,2,2,'9521234');
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
INSERT INTO "check" VALUES(60,'check',51,'Read again.');
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
INSERT INTO "clean" VALUES(61,'clean','Demijohn 2','Hot water','Orange essence');
CREATE TABLE closing (
seq INTEGER NOT NULL,
entry_kind TEXT NOT NULL,
cause TEXT NOT NULL,
CONSTRAINT pk_closing PRIMARY KEY (seq),
CONSTRAINT fk_closing_seq_entry_kind FOREIGN KEY(seq, entry_kind) REFERENCES entry (seq, kind),
CONSTRAINT ck_closing_entry_kind CHECK (entry_kind = 'closing')
)
STRICT;
INSERT INTO "closing" VALUES(73,'closing','the orange oil was old');
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
INSERT INTO "complaint" VALUES(35,'complaint','cloudy',NULL,NULL,NULL,NULL,NULL,NULL,NULL,7);
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
INSERT INTO "contact" VALUES(71,'contact','P1','spoken',NULL,NULL,NULL,NULL);
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
INSERT INTO "count" VALUES(50,'count',96000000,'uL','96L');
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
INSERT INTO "decant" VALUES(48,'decant',180000,'uL','180mL',10000,'uL','10mL');
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
INSERT INTO "details" VALUES(2,'0000000000000000000000000000000000000000000000000000000000000000','Anna Bell',NULL,NULL,NULL,NULL,NULL,NULL);
INSERT INTO "details" VALUES(65,'0000000000000000000000000000000000000000000000000000000000000000','Bridge Street Stall',NULL,'01 555 0100',NULL,'1 Bridge Street',NULL,'9521234000013');
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
INSERT INTO "deviation" VALUES(59,'deviation','on hand','2 L is more than is there of SOO-001-3: the book says 469.231 mL.',58);
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
INSERT INTO "entry" VALUES(1,'house',NULL,'2026-03-02T08:00:00Z',0,'exact','2026-03-02T08:00:00Z','bench',NULL,NULL,NULL,1,NULL,'{"facts":{"currency":"EUR","fluid_ounce":"US","name":"Quayside Essences","time_zone":"Europe/Dublin"},"happened_at":"2026-03-02T08:00:00Z","kind":"house","offset_min":0,"origin":"bench","precision":"exact","recorded_at":"2026-03-02T08:00:00Z","seq":1,"stands_for":1,"v":1}',X'EF3F484C7FCD78702475B433CC58852E23CC9EC7B2E3CB4AB7F2C3F79C6F4386');
INSERT INTO "entry" VALUES(2,'person',NULL,'2026-03-02T08:05:00Z',0,'exact','2026-03-02T08:05:00Z','bench',NULL,'AB',NULL,2,NULL,'{"by":"AB","facts":{"commitment":"ec4bcfedf810ae9f2de531b611efe84c896f3d791055e0ab5fb34f386cf4a118","initials":"AB"},"happened_at":"2026-03-02T08:05:00Z","kind":"person","offset_min":0,"origin":"bench","precision":"exact","recorded_at":"2026-03-02T08:05:00Z","seq":2,"stands_for":2,"v":1}',X'E45EC32B95585542B807551EE862D4CB2D8F60F7A1ADA502EBA1F0EE659D4FC9');
INSERT INTO "entry" VALUES(3,'material',NULL,'2026-03-02T08:10:00Z',0,'exact','2026-03-02T08:10:00Z','bench',NULL,'AB',NULL,3,NULL,'{"by":"AB","facts":{"allergens":"none","code":"orange-oil","constituents":[{"fraction_ppm":940000,"substance":"limonene"}],"density_mg_per_l":845000,"food_grade":"unknown","how_obtained":"expressed","name":"Sweet orange oil","sort":"oil"},"happened_at":"2026-03-02T08:10:00Z","kind":"material","offset_min":0,"origin":"bench","precision":"exact","recorded_at":"2026-03-02T08:10:00Z","seq":3,"stands_for":3,"v":1}',X'C76871D91C918ADD87CFE25DEDCE0263CDCDC0A522E57B25777DC8B4E235663D');
INSERT INTO "entry" VALUES(4,'material',NULL,'2026-03-02T08:15:00Z',0,'exact','2026-03-02T08:15:00Z','bench',NULL,'AB',NULL,4,NULL,'{"by":"AB","facts":{"abv_mpct":96000,"allergens":"none","code":"spirit","food_grade":"unknown","name":"Neutral spirit","sort":"ethanol"},"happened_at":"2026-03-02T08:15:00Z","kind":"material","offset_min":0,"origin":"bench","precision":"exact","recorded_at":"2026-03-02T08:15:00Z","seq":4,"stands_for":4,"v":1}',X'1E971FBDAF53D3F8951FAF0E10C10DA79A8B62ABE9A696D2CCC5BDA67BD1ACAE');
INSERT INTO "entry" VALUES(5,'material',NULL,'2026-03-02T08:20:00Z',0,'exact','2026-03-02T08:20:00Z','bench',NULL,'AB',NULL,5,NULL,'{"by":"AB","facts":{"code":"carb","food_grade":"unknown","name":"Light magnesium carbonate","sort":"clarifier"},"happened_at":"2026-03-02T08:20:00Z","kind":"material","offset_min":0,"origin":"bench","precision":"exact","recorded_at":"2026-03-02T08:20:00Z","seq":5,"stands_for":5,"v":1}',X'E3A47890AB5F55DB743669F4862140798798C1C2CDF7A8C1A2CAD6E8DCEC5E9C');
INSERT INTO "entry" VALUES(6,'material',NULL,'2026-03-02T08:25:00Z',0,'exact','2026-03-02T08:25:00Z','bench',NULL,'AB',NULL,6,NULL,'{"by":"AB","facts":{"allergens":"none","code":"sugar","food_grade":"unknown","name":"Sugar","sort":"sugar"},"happened_at":"2026-03-02T08:25:00Z","kind":"material","offset_min":0,"origin":"bench","precision":"exact","recorded_at":"2026-03-02T08:25:00Z","seq":6,"stands_for":6,"v":1}',X'6B827A57072775AB09DE3E791C5E9D5CAE3AECEFBD1BBB94046AECEA9A48F02A');
INSERT INTO "entry" VALUES(7,'material',NULL,'2026-03-02T08:30:00Z',0,'exact','2026-03-02T08:30:00Z','bench',NULL,'AB',NULL,7,NULL,'{"by":"AB","facts":{"code":"water","food_grade":"unknown","name":"water","sort":"water"},"happened_at":"2026-03-02T08:30:00Z","kind":"material","offset_min":0,"origin":"bench","precision":"exact","recorded_at":"2026-03-02T08:30:00Z","seq":7,"stands_for":7,"v":1}',X'05BEE1DB662415AA12A40CEEB342EA04B7A7D49D41EAD81C12AA67D741375522');
INSERT INTO "entry" VALUES(8,'material',NULL,'2026-03-02T08:35:00Z',0,'exact','2026-03-02T08:35:00Z','bench',NULL,'AB',NULL,8,NULL,'{"by":"AB","facts":{"code":"b250","food_grade":"unknown","name":"b250","sort":"bottle"},"happened_at":"2026-03-02T08:35:00Z","kind":"material","offset_min":0,"origin":"bench","precision":"exact","recorded_at":"2026-03-02T08:35:00Z","seq":8,"stands_for":8,"v":1}',X'B8E0AD2720BA35F341AC9343FD5CE88FBB8969E7053EEA14AD1CCF83CC29B073');
INSERT INTO "entry" VALUES(9,'receipt',9,'2026-03-02T09:05:00Z',0,'exact','2026-03-02T09:05:00Z','bench',NULL,'AB',NULL,9,NULL,'{"by":"AB","facts":{"amount":{"amount":500000,"measure":"uL","written":"500mL"},"best_before":"2027-06-30","cost_minor":4800,"material":"orange-oil","supplier":"Harbour Oils","supplier_lot":"C7731"},"happened_at":"2026-03-02T09:05:00Z","kind":"receipt","lot":"SOO-001-3","offset_min":0,"opens":{"code":"SOO-001-3","lot_type":"received","measure":"uL"},"origin":"bench","postings":[{"given":500000,"place":"supplier","taken":500000,"target":"SOO-001-3"}],"precision":"exact","recorded_at":"2026-03-02T09:05:00Z","seq":9,"stands_for":9,"v":1}',X'9C988ADE335F876EBE585C66F1F870B76118753758091A41355CD80C26513A2F');
INSERT INTO "entry" VALUES(10,'receipt',10,'2026-03-02T09:10:00Z',0,'exact','2026-03-02T09:10:00Z','bench',NULL,'AB',NULL,10,NULL,'{"by":"AB","facts":{"amount":{"amount":5000000,"measure":"uL","written":"5L"},"material":"spirit"},"happened_at":"2026-03-02T09:10:00Z","kind":"receipt","lot":"NS-001-J","offset_min":0,"opens":{"code":"NS-001-J","lot_type":"received","measure":"uL"},"origin":"bench","postings":[{"given":5000000,"place":"supplier","taken":5000000,"target":"NS-001-J"}],"precision":"exact","recorded_at":"2026-03-02T09:10:00Z","seq":10,"stands_for":10,"v":1}',X'7ED7488E2E420D03645F9803A461FA7DE611D7ECE8B4CD9CA6EBA48370895C5B');
INSERT INTO "entry" VALUES(11,'receipt',11,'2026-03-02T09:15:00Z',0,'exact','2026-03-02T09:15:00Z','bench',NULL,'AB',NULL,11,NULL,'{"by":"AB","facts":{"amount":{"amount":500000,"measure":"mg","written":"500g"},"material":"carb"},"happened_at":"2026-03-02T09:15:00Z","kind":"receipt","lot":"LMC-001-F","offset_min":0,"opens":{"code":"LMC-001-F","lot_type":"received","measure":"mg"},"origin":"bench","postings":[{"given":500000,"place":"supplier","taken":500000,"target":"LMC-001-F"}],"precision":"exact","recorded_at":"2026-03-02T09:15:00Z","seq":11,"stands_for":11,"v":1}',X'8932AB3027D83BC88A8559D4C6ADB884287C2B23805C14C09FB19B9414B94ED5');
INSERT INTO "entry" VALUES(12,'receipt',12,'2026-03-02T09:20:00Z',0,'exact','2026-03-02T09:20:00Z','bench',NULL,'AB',NULL,12,NULL,'{"by":"AB","facts":{"amount":{"amount":25000000,"measure":"mg","written":"25kg"},"material":"sugar"},"happened_at":"2026-03-02T09:20:00Z","kind":"receipt","lot":"SGR-002-J","offset_min":0,"opens":{"code":"SGR-002-J","lot_type":"received","measure":"mg"},"origin":"bench","postings":[{"given":25000000,"place":"supplier","taken":25000000,"target":"SGR-002-J"}],"precision":"exact","recorded_at":"2026-03-02T09:20:00Z","seq":12,"stands_for":12,"v":1}',X'068370E85C48311A7E2F462972B789A4FEA6B89FABF4C446364A1ED661676985');
INSERT INTO "entry" VALUES(13,'receipt',13,'2026-03-02T09:25:00Z',0,'exact','2026-03-02T09:25:00Z','bench',NULL,'AB',NULL,13,NULL,'{"by":"AB","facts":{"amount":{"amount":100000000,"measure":"uL","written":"100L"},"material":"water"},"happened_at":"2026-03-02T09:25:00Z","kind":"receipt","lot":"WTR-002-Y","offset_min":0,"opens":{"code":"WTR-002-Y","lot_type":"received","measure":"uL"},"origin":"bench","postings":[{"given":100000000,"place":"supplier","taken":100000000,"target":"WTR-002-Y"}],"precision":"exact","recorded_at":"2026-03-02T09:25:00Z","seq":13,"stands_for":13,"v":1}',X'8F6F289A3727A04F98741A6FFE269D33052BE12714E4D496354729A57035305D');
INSERT INTO "entry" VALUES(14,'receipt',14,'2026-03-02T09:30:00Z',0,'exact','2026-03-02T09:30:00Z','bench',NULL,'AB',NULL,14,NULL,'{"by":"AB","facts":{"amount":{"amount":100000000,"measure":"ueach","written":"100"},"material":"b250"},"happened_at":"2026-03-02T09:30:00Z","kind":"receipt","lot":"LOT-001-X","offset_min":0,"opens":{"code":"LOT-001-X","lot_type":"received","measure":"ueach"},"origin":"bench","postings":[{"given":100000000,"place":"supplier","taken":100000000,"target":"LOT-001-X"}],"precision":"exact","recorded_at":"2026-03-02T09:30:00Z","seq":14,"stands_for":14,"v":1}',X'FB85BCB63464C50202C0FC6922438E547936FDDEF97F0BAD0A6177A943ED15A9');
INSERT INTO "entry" VALUES(15,'start',15,'2026-03-02T09:35:00Z',0,'exact','2026-03-02T09:35:00Z','bench',NULL,'AB',NULL,15,NULL,'{"by":"AB","facts":{"product":"Orange essence","product_kind":"essence","purpose":"sale","target":{"amount":480000,"measure":"uL","written":"480mL"}},"happened_at":"2026-03-02T09:35:00Z","kind":"start","lot":"OE-001-5","offset_min":0,"opens":{"code":"OE-001-5","lot_type":"made","measure":"uL"},"origin":"bench","precision":"exact","recorded_at":"2026-03-02T09:35:00Z","seq":15,"stands_for":15,"v":1}',X'F92096B464451FB54BC17755673494374BC0CA8B0DC6A9C53FD517347123DF13');
INSERT INTO "entry" VALUES(16,'add',15,'2026-03-02T09:40:00Z',0,'exact','2026-03-02T09:40:00Z','bench',NULL,'AB',NULL,16,NULL,'{"by":"AB","facts":{"added_as":"ingredient","amount":{"amount":25000,"measure":"mg","written":"25g"},"source":"SOO-001-3"},"happened_at":"2026-03-02T09:40:00Z","kind":"add","lot":"OE-001-5","offset_min":0,"origin":"bench","postings":[{"given":29586,"source":"SOO-001-3","taken":29586,"target":"OE-001-5"}],"precision":"exact","recorded_at":"2026-03-02T09:40:00Z","seq":16,"stands_for":16,"v":1}',X'E66B28C3D750849B34A6D0A6289FCD0FBAC6AAB8676F37C299980DC99F721368');
INSERT INTO "entry" VALUES(17,'add',15,'2026-03-02T09:45:00Z',0,'exact','2026-03-02T09:45:00Z','bench',NULL,'AB',NULL,17,NULL,'{"by":"AB","facts":{"added_as":"ingredient","amount":{"amount":15000,"measure":"mg","written":"15g"},"source":"LMC-001-F"},"happened_at":"2026-03-02T09:45:00Z","kind":"add","lot":"OE-001-5","offset_min":0,"origin":"bench","postings":[{"given":0,"source":"LMC-001-F","taken":15000,"target":"OE-001-5"}],"precision":"exact","recorded_at":"2026-03-02T09:45:00Z","seq":17,"stands_for":17,"v":1}',X'6FD5879B211391A96E748EE992A1603CA7EE67D2E40601D9A2294906C3D8FB50');
INSERT INTO "entry" VALUES(18,'add',15,'2026-03-02T09:50:00Z',0,'exact','2026-03-02T09:50:00Z','bench',NULL,'AB',NULL,18,NULL,'{"by":"AB","facts":{"added_as":"ingredient","amount":{"amount":420000,"measure":"uL","written":"420mL"},"source":"NS-001-J"},"happened_at":"2026-03-02T09:50:00Z","kind":"add","lot":"OE-001-5","offset_min":0,"origin":"bench","postings":[{"given":420000,"source":"NS-001-J","taken":420000,"target":"OE-001-5"}],"precision":"exact","recorded_at":"2026-03-02T09:50:00Z","seq":18,"stands_for":18,"v":1}',X'60AA4727BFE99C1EFBDE229ED9DF58BCD346BA619519637BA8CC8177FE0982F7');
INSERT INTO "entry" VALUES(19,'rest',15,'2026-03-02T09:55:00Z',0,'exact','2026-03-02T09:55:00Z','bench',NULL,'AB',NULL,19,NULL,'{"by":"AB","facts":{"purpose":"macerate","started_at":"2026-03-02T09:55:00Z"},"happened_at":"2026-03-02T09:55:00Z","kind":"rest","lot":"OE-001-5","offset_min":0,"origin":"bench","precision":"exact","recorded_at":"2026-03-02T09:55:00Z","seq":19,"stands_for":19,"v":1}',X'72A6EED035B581C51360D340A451540E522BE8FE60AAD9325D25F7396D0C0A6A');
INSERT INTO "entry" VALUES(20,'rest',15,'2026-03-04T10:00:00Z',0,'exact','2026-03-04T10:00:00Z','bench',NULL,'AB',NULL,20,NULL,'{"by":"AB","facts":{"began":19,"ended_at":"2026-03-04T10:00:00Z","purpose":"macerate","started_at":"2026-03-02T09:55:00Z"},"happened_at":"2026-03-04T10:00:00Z","kind":"rest","lot":"OE-001-5","offset_min":0,"origin":"bench","precision":"exact","recorded_at":"2026-03-04T10:00:00Z","seq":20,"stands_for":20,"v":1}',X'FEA30BC4193DF574F33A0368F9A060295A98E799A03D9D3DA6A37978363D5EBF');
INSERT INTO "entry" VALUES(21,'filter',15,'2026-03-04T10:05:00Z',0,'exact','2026-03-04T10:05:00Z','bench',NULL,'AB',NULL,21,NULL,'{"by":"AB","facts":{"medium":"paper","pass_no":1,"pore_high_nm":20000,"pore_low_nm":20000,"vacuum_pa":40000,"vacuum_reference":"below-atmosphere","volume_in":{"amount":445000,"measure":"uL","written":"445mL"},"volume_out":{"amount":430000,"measure":"uL","written":"430mL"}},"happened_at":"2026-03-04T10:05:00Z","kind":"filter","level":{"amount":430000,"lot":"OE-001-5"},"lot":"OE-001-5","offset_min":0,"origin":"bench","precision":"exact","recorded_at":"2026-03-04T10:05:00Z","seq":21,"stands_for":21,"v":1}',X'50EDFAD3B70B5C45F29475B73BF85A4E05972E2AE195144CD18B4E69AE32A9E6');
INSERT INTO "entry" VALUES(22,'makeup',15,'2026-03-04T10:10:00Z',0,'exact','2026-03-04T10:10:00Z','bench',NULL,'AB',NULL,22,NULL,'{"by":"AB","facts":{"source":"NS-001-J","used":{"amount":20000,"measure":"uL","written":"20 mL"},"volume":{"amount":450000,"measure":"uL","written":"450mL"}},"happened_at":"2026-03-04T10:10:00Z","kind":"makeup","level":{"amount":450000,"lot":"OE-001-5"},"lot":"OE-001-5","offset_min":0,"origin":"bench","postings":[{"given":20000,"source":"NS-001-J","taken":20000,"target":"OE-001-5"}],"precision":"exact","recorded_at":"2026-03-04T10:10:00Z","seq":22,"stands_for":22,"v":1}',X'4E3B6762D33DA64D5399533FA640F88BFD3DCBDA863696BD42DAA7B40A0215CE');
INSERT INTO "entry" VALUES(23,'look',15,'2026-03-04T10:15:00Z',0,'exact','2026-03-04T10:15:00Z','bench',NULL,'AB',NULL,23,NULL,'{"by":"AB","facts":{"crystals":false,"floc":false,"grade":"hazy","looked_at":"neat","louche":false,"ntu_milli":9400,"ring":false,"sediment":false},"happened_at":"2026-03-04T10:15:00Z","kind":"look","lot":"OE-001-5","offset_min":0,"origin":"bench","precision":"exact","recorded_at":"2026-03-04T10:15:00Z","seq":23,"stands_for":23,"v":1}',X'EE24CB749D0FD4DA4E40D37C0AC4C1813C88F01FE988D653F635D16A9077127B');
INSERT INTO "entry" VALUES(24,'finish',15,'2026-03-04T10:20:00Z',0,'exact','2026-03-04T10:20:00Z','bench',NULL,'AB',NULL,24,NULL,'{"by":"AB","facts":{"volume":{"amount":448000,"measure":"uL","written":"448mL"}},"happened_at":"2026-03-04T10:20:00Z","kind":"finish","level":{"amount":448000,"lot":"OE-001-5"},"lot":"OE-001-5","offset_min":0,"origin":"bench","precision":"exact","recorded_at":"2026-03-04T10:20:00Z","seq":24,"stands_for":24,"v":1}',X'9F96F325C2B76E3E367D05904F161280D2C2BBDD6C1F29E72C854944ACD7F550');
INSERT INTO "entry" VALUES(25,'judge',15,'2026-03-04T10:25:00Z',0,'exact','2026-03-04T10:25:00Z','bench',NULL,'AB',NULL,25,NULL,'{"by":"AB","facts":{"verdict":"release"},"happened_at":"2026-03-04T10:25:00Z","kind":"judge","lot":"OE-001-5","offset_min":0,"origin":"bench","precision":"exact","recorded_at":"2026-03-04T10:25:00Z","seq":25,"stands_for":25,"v":1}',X'9E1B38414E0D9C096779CC5FAC98B2B9313C9ABBCC580652EAA5525EF097EFF2');
INSERT INTO "entry" VALUES(26,'start',26,'2026-03-04T10:30:00Z',0,'exact','2026-03-04T10:30:00Z','bench',NULL,'AB',NULL,26,NULL,'{"by":"AB","facts":{"product":"Orange syrup","product_kind":"syrup","purpose":"sale","target":{"amount":4000000,"measure":"uL","written":"4L"}},"happened_at":"2026-03-04T10:30:00Z","kind":"start","lot":"OS-002-M","offset_min":0,"opens":{"code":"OS-002-M","lot_type":"made","measure":"uL"},"origin":"bench","precision":"exact","recorded_at":"2026-03-04T10:30:00Z","seq":26,"stands_for":26,"v":1}',X'DA9AA8270FA69E1AC7BDACAB9B163A5E273A9F06DD28D7C9A509BF3B47083AE2');
INSERT INTO "entry" VALUES(27,'add',26,'2026-03-04T10:35:00Z',0,'exact','2026-03-04T10:35:00Z','bench',NULL,'AB',NULL,27,NULL,'{"by":"AB","facts":{"added_as":"ingredient","amount":{"amount":2400000,"measure":"mg","written":"2.4kg"},"source":"SGR-002-J"},"happened_at":"2026-03-04T10:35:00Z","kind":"add","lot":"OS-002-M","offset_min":0,"origin":"bench","postings":[{"given":0,"source":"SGR-002-J","taken":2400000,"target":"OS-002-M"}],"precision":"exact","recorded_at":"2026-03-04T10:35:00Z","seq":27,"stands_for":27,"v":1}',X'9A0198D93353CB7869AB6BCB4D317435BE06084DC0CBA4C3BE8B7C75A2537543');
INSERT INTO "entry" VALUES(28,'add',26,'2026-03-04T10:40:00Z',0,'exact','2026-03-04T10:40:00Z','bench',NULL,'AB',NULL,28,NULL,'{"by":"AB","facts":{"added_as":"ingredient","amount":{"amount":2400000,"measure":"uL","written":"2.4L"},"source":"WTR-002-Y"},"happened_at":"2026-03-04T10:40:00Z","kind":"add","lot":"OS-002-M","offset_min":0,"origin":"bench","postings":[{"given":2400000,"source":"WTR-002-Y","taken":2400000,"target":"OS-002-M"}],"precision":"exact","recorded_at":"2026-03-04T10:40:00Z","seq":28,"stands_for":28,"v":1}',X'0DBF86936356EAEAB9C8DB7B817964BA6FE21EFC3C1A6DEAB928C0B06DECFFF8');
INSERT INTO "entry" VALUES(29,'add',26,'2026-03-04T10:45:00Z',0,'exact','2026-03-04T10:45:00Z','bench',NULL,'AB',NULL,29,NULL,'{"by":"AB","facts":{"added_as":"ingredient","amount":{"amount":30000,"measure":"uL","written":"30mL"},"source":"OE-001-5"},"happened_at":"2026-03-04T10:45:00Z","kind":"add","lot":"OS-002-M","offset_min":0,"origin":"bench","postings":[{"given":30000,"source":"OE-001-5","taken":30000,"target":"OS-002-M"}],"precision":"exact","recorded_at":"2026-03-04T10:45:00Z","seq":29,"stands_for":29,"v":1}',X'4C4F1C14E9B1931011C9FBD7213B34A65FC4D2BDE92BAD7150438924B1944EC6');
INSERT INTO "entry" VALUES(30,'look',26,'2026-03-04T10:50:00Z',0,'exact','2026-03-04T10:50:00Z','bench',NULL,'AB',NULL,30,NULL,'{"by":"AB","facts":{"crystals":false,"floc":false,"grade":"cloudy","looked_at":"neat","louche":false,"ring":false,"sediment":false},"happened_at":"2026-03-04T10:50:00Z","kind":"look","lot":"OS-002-M","offset_min":0,"origin":"bench","precision":"exact","recorded_at":"2026-03-04T10:50:00Z","seq":30,"stands_for":30,"v":1}',X'3B0D4DCF66B240D0D00B3C3467396E09526076DEE9CA9CBA93B8F02390D7E3BB');
INSERT INTO "entry" VALUES(31,'finish',26,'2026-03-04T10:55:00Z',0,'exact','2026-03-04T10:55:00Z','bench',NULL,'AB',NULL,31,NULL,'{"by":"AB","facts":{"volume":{"amount":3800000,"measure":"uL","written":"3.8L"}},"happened_at":"2026-03-04T10:55:00Z","kind":"finish","level":{"amount":3800000,"lot":"OS-002-M"},"lot":"OS-002-M","offset_min":0,"origin":"bench","precision":"exact","recorded_at":"2026-03-04T10:55:00Z","seq":31,"stands_for":31,"v":1}',X'36609ACA74E96686EE32C8520FBBDFCA913016DEDD259300E14A1533572C6944');
INSERT INTO "entry" VALUES(32,'bottle',32,'2026-03-04T11:00:00Z',0,'exact','2026-03-04T11:00:00Z','bench',NULL,'AB',NULL,32,NULL,'{"by":"AB","facts":{"bottles":"LOT-001-X","count":15,"drawn":{"amount":3750000,"measure":"uL","written":"3.75 L"},"size":{"amount":250000,"measure":"uL","written":"250mL"},"source":"OS-002-M"},"happened_at":"2026-03-04T11:00:00Z","kind":"bottle","lot":"BOS-001-S","offset_min":0,"opens":{"code":"BOS-001-S","lot_type":"packed","measure":"ueach"},"origin":"bench","postings":[{"given":15000000,"source":"OS-002-M","taken":3750000,"target":"BOS-001-S"},{"given":0,"source":"LOT-001-X","taken":15000000,"target":"BOS-001-S"}],"precision":"exact","recorded_at":"2026-03-04T11:00:00Z","seq":32,"stands_for":32,"v":1}',X'21E4B4B3A04D848D895C79953C2391E8048C7795ABA34874AAEF3ABB2AE65457');
INSERT INTO "entry" VALUES(33,'judge',32,'2026-03-04T11:05:00Z',0,'exact','2026-03-04T11:05:00Z','bench',NULL,'AB',NULL,33,NULL,'{"by":"AB","facts":{"verdict":"release"},"happened_at":"2026-03-04T11:05:00Z","kind":"judge","lot":"BOS-001-S","offset_min":0,"origin":"bench","precision":"exact","recorded_at":"2026-03-04T11:05:00Z","seq":33,"stands_for":33,"v":1}',X'FBFCBC4D7916D0BF9B7E62F4E572E8771B613818AFCC9B26CEE97DE5208590F5');
INSERT INTO "entry" VALUES(34,'move',32,'2026-03-04T11:10:00Z',0,'exact','2026-03-04T11:10:00Z','bench',NULL,'AB',NULL,34,NULL,'{"by":"AB","facts":{"amount":{"amount":6000000,"measure":"ueach","written":"6"},"moved_as":"sale","party":"Bridge Street Stall"},"happened_at":"2026-03-04T11:10:00Z","kind":"move","lot":"BOS-001-S","offset_min":0,"origin":"bench","postings":[{"given":0,"place":"sale","source":"BOS-001-S","taken":6000000}],"precision":"exact","recorded_at":"2026-03-04T11:10:00Z","seq":34,"stands_for":34,"v":1}',X'B8F6D4E10B1AD07F32A790EC7E5F6C53C0A00A771C48FCECE6CE636025745D8F');
INSERT INTO "entry" VALUES(35,'complaint',32,'2026-03-04T11:15:00Z',0,'exact','2026-03-04T11:15:00Z','bench',NULL,'AB',NULL,35,NULL,'{"by":"AB","facts":{"answer_days":7,"symptom":"cloudy"},"happened_at":"2026-03-04T11:15:00Z","kind":"complaint","lot":"BOS-001-S","offset_min":0,"origin":"bench","precision":"exact","recorded_at":"2026-03-04T11:15:00Z","seq":35,"stands_for":35,"v":1}',X'3F927F6D75CF2A65D9B1FF98AC5EA8EB5DA04B5EA1DA1F1BA364DDBE9959246D');
INSERT INTO "entry" VALUES(36,'add',15,'2026-03-02T09:40:00Z',0,'exact','2026-03-04T11:20:00Z','bench',NULL,'AB',16,16,'misread','{"by":"AB","corrects":16,"facts":{"added_as":"ingredient","amount":{"amount":26000,"measure":"mg","written":"26g"},"source":"SOO-001-3"},"happened_at":"2026-03-02T09:40:00Z","kind":"add","lot":"OE-001-5","offset_min":0,"origin":"bench","postings":[{"given":30769,"source":"SOO-001-3","taken":30769,"target":"OE-001-5"}],"precision":"exact","reason":"misread","recorded_at":"2026-03-04T11:20:00Z","seq":36,"stands_for":16,"v":1}',X'39258172B913A2E7D378E990F1984125437C93C2648D6903F16429893E50737C');
INSERT INTO "entry" VALUES(37,'start',37,'2026-03-04T11:25:00Z',0,'exact','2026-03-04T11:25:00Z','bench',NULL,'AB',NULL,37,NULL,'{"by":"AB","facts":{"factors":[{"name":"pore","planned":"5"}],"product":"Trial","product_kind":"essence","purpose":"trial","target":{"amount":1000000,"measure":"uL","written":"1L"},"trial_group":"pores"},"happened_at":"2026-03-04T11:25:00Z","kind":"start","lot":"TRL-001-2","offset_min":0,"opens":{"code":"TRL-001-2","lot_type":"made","measure":"uL"},"origin":"bench","precision":"exact","recorded_at":"2026-03-04T11:25:00Z","seq":37,"stands_for":37,"v":1}',X'DE6087F51B601179BE5B86F2DC19E7BD51C824F1FBD4632F3A202FE2B38B9882');
INSERT INTO "entry" VALUES(38,'add',37,'2026-03-04T11:30:00Z',0,'exact','2026-03-04T11:30:00Z','bench',NULL,'AB',NULL,38,NULL,'{"by":"AB","facts":{"added_as":"ingredient","amount":{"amount":200000,"measure":"uL","written":"200mL"},"source":"NS-001-J"},"happened_at":"2026-03-04T11:30:00Z","kind":"add","lot":"TRL-001-2","offset_min":0,"origin":"bench","postings":[{"given":200000,"source":"NS-001-J","taken":200000,"target":"TRL-001-2"}],"precision":"exact","recorded_at":"2026-03-04T11:30:00Z","seq":38,"stands_for":38,"v":1}',X'5A9194F2F88773686C116D1E645D0E1617CF51E98A8B725457F7F737966FBBBA');
INSERT INTO "entry" VALUES(39,'rinse',37,'2026-03-04T11:35:00Z',0,'exact','2026-03-04T11:35:00Z','bench',NULL,'AB',NULL,39,NULL,'{"by":"AB","facts":{"source":"NS-001-J","volume_in":{"amount":20000,"measure":"uL","written":"20mL"},"volume_out":{"amount":15000,"measure":"uL","written":"15mL"},"went_to":"apart"},"happened_at":"2026-03-04T11:35:00Z","kind":"rinse","lot":"TRL-001-2","offset_min":0,"opens":{"code":"RL-001-3","lot_type":"rinse","measure":"uL"},"origin":"bench","postings":[{"given":15000,"source":"NS-001-J","taken":20000,"target":"RL-001-3"},{"given":0,"source":"TRL-001-2","taken":0,"target":"RL-001-3"}],"precision":"exact","recorded_at":"2026-03-04T11:35:00Z","seq":39,"stands_for":39,"v":1}',X'A515A083C17F5E59A9FA7F15E5A58E3A3CF00B40E5CEFA81AFE9AF3E792FD139');
INSERT INTO "entry" VALUES(40,'forecast',15,'2026-03-04T11:40:00Z',0,'exact','2026-03-04T11:40:00Z','bench',NULL,'AB',NULL,40,NULL,'{"by":"AB","facts":{"carried":"yes","clear_high_mpct":95442,"clear_likely_mpct":84688,"clear_low_mpct":73934,"dose_ul":898,"glass_high_milli":90323,"glass_low_milli":3913,"neat_high_milli":3000,"neat_low_milli":0,"oils":"orange","spirit_mpct":96000,"syrup_high_milli":42243,"syrup_low_milli":250},"happened_at":"2026-03-04T11:40:00Z","kind":"forecast","lot":"OE-001-5","offset_min":0,"origin":"bench","precision":"exact","recorded_at":"2026-03-04T11:40:00Z","seq":40,"stands_for":40,"v":1}',X'77BFA4CB7F0E5D81A9F9A5A55D1B34B0B26CAD30C6B80E7CE6F4577C3E296102');
INSERT INTO "entry" VALUES(41,'trial',NULL,'2026-03-04T11:45:00Z',0,'exact','2026-03-04T11:45:00Z','bench',NULL,'AB',NULL,41,NULL,'{"by":"AB","facts":{"age":"7 d","chance_mpct":94000,"decides":"look","draw":2,"else_mpct":5000,"entries":40,"evenings":[{"jars":6},{"jars":6}],"factors":[{"name":"pore","suspected":"20","usual":"5"}],"fails_mpct":90000,"jar":{"amount":50000,"measure":"uL","written":"50mL"},"level_mpct":5000,"name":"pores again","number":1,"product":"pores again","product_kind":"essence","root":"f93886de38c7052d32ccd758023b2d082cf7d5c16efe5411e3477fe09181f0df","worst":"clear"},"happened_at":"2026-03-04T11:45:00Z","kind":"trial","offset_min":0,"origin":"bench","precision":"exact","recorded_at":"2026-03-04T11:45:00Z","seq":41,"stands_for":41,"v":1}',X'010562454FD591277046B6753DF57403A448E0772484F4DAE0D9E7C1E0C71C71');
INSERT INTO "entry" VALUES(42,'start',42,'2026-03-04T11:50:00Z',0,'exact','2026-03-04T11:50:00Z','bench',NULL,'AB',NULL,42,NULL,'{"by":"AB","facts":{"factors":[{"name":"pore","planned":"20"}],"jar":1,"planned_by":41,"product":"pores again","product_kind":"essence","purpose":"trial","target":{"amount":50000,"measure":"uL","written":"50mL"},"trial_group":"pores again"},"happened_at":"2026-03-04T11:50:00Z","kind":"start","lot":"T1-182-B","offset_min":0,"opens":{"code":"T1-182-B","lot_type":"made","measure":"uL"},"origin":"bench","precision":"exact","recorded_at":"2026-03-04T11:50:00Z","seq":42,"stands_for":42,"v":1}',X'AEF6A427D3427EBBB363344C751FBF2C906111EE61A9824962EADFC829B61053');
INSERT INTO "entry" VALUES(43,'start',43,'2026-03-04T11:50:00Z',0,'exact','2026-03-04T11:50:00Z','bench',NULL,'AB',NULL,43,NULL,'{"by":"AB","facts":{"factors":[{"name":"pore","planned":"20"}],"jar":2,"planned_by":41,"product":"pores again","product_kind":"essence","purpose":"trial","target":{"amount":50000,"measure":"uL","written":"50mL"},"trial_group":"pores again"},"happened_at":"2026-03-04T11:50:00Z","kind":"start","lot":"T1-192-7","offset_min":0,"opens":{"code":"T1-192-7","lot_type":"made","measure":"uL"},"origin":"bench","precision":"exact","recorded_at":"2026-03-04T11:50:00Z","seq":43,"stands_for":43,"v":1}',X'1FB74B36D729DAC356A4BF67BF9A90C3339936D5EE2452E88A28547BEEF168EE');
INSERT INTO "entry" VALUES(44,'start',44,'2026-03-04T11:50:00Z',0,'exact','2026-03-04T11:50:00Z','bench',NULL,'AB',NULL,44,NULL,'{"by":"AB","facts":{"factors":[{"name":"pore","planned":"5"}],"jar":3,"planned_by":41,"product":"pores again","product_kind":"essence","purpose":"trial","target":{"amount":50000,"measure":"uL","written":"50mL"},"trial_group":"pores again"},"happened_at":"2026-03-04T11:50:00Z","kind":"start","lot":"T1-944-V","offset_min":0,"opens":{"code":"T1-944-V","lot_type":"made","measure":"uL"},"origin":"bench","precision":"exact","recorded_at":"2026-03-04T11:50:00Z","seq":44,"stands_for":44,"v":1}',X'C06A3D161EF6DD6DC984E93AE613D68BC247BD0729AC6810B9050B5FEFF3E44A');
INSERT INTO "entry" VALUES(45,'start',45,'2026-03-04T11:50:00Z',0,'exact','2026-03-04T11:50:00Z','bench',NULL,'AB',NULL,45,NULL,'{"by":"AB","facts":{"factors":[{"name":"pore","planned":"5"}],"jar":4,"planned_by":41,"product":"pores again","product_kind":"essence","purpose":"trial","target":{"amount":50000,"measure":"uL","written":"50mL"},"trial_group":"pores again"},"happened_at":"2026-03-04T11:50:00Z","kind":"start","lot":"T1-360-7","offset_min":0,"opens":{"code":"T1-360-7","lot_type":"made","measure":"uL"},"origin":"bench","precision":"exact","recorded_at":"2026-03-04T11:50:00Z","seq":45,"stands_for":45,"v":1}',X'01A8F13B800542C89C7AF51679B3FAC3DD0D644D77B465A0747D59F277AE2941');
INSERT INTO "entry" VALUES(46,'start',46,'2026-03-04T11:50:00Z',0,'exact','2026-03-04T11:50:00Z','bench',NULL,'AB',NULL,46,NULL,'{"by":"AB","facts":{"factors":[{"name":"pore","planned":"20"}],"jar":5,"planned_by":41,"product":"pores again","product_kind":"essence","purpose":"trial","target":{"amount":50000,"measure":"uL","written":"50mL"},"trial_group":"pores again"},"happened_at":"2026-03-04T11:50:00Z","kind":"start","lot":"T1-803-M","offset_min":0,"opens":{"code":"T1-803-M","lot_type":"made","measure":"uL"},"origin":"bench","precision":"exact","recorded_at":"2026-03-04T11:50:00Z","seq":46,"stands_for":46,"v":1}',X'6A3E92757E44905B0569FE80B84D647769B9F935AA326FF7FF29CFDC089A130D');
INSERT INTO "entry" VALUES(47,'start',47,'2026-03-04T11:50:00Z',0,'exact','2026-03-04T11:50:00Z','bench',NULL,'AB',NULL,47,NULL,'{"by":"AB","facts":{"factors":[{"name":"pore","planned":"5"}],"jar":6,"planned_by":41,"product":"pores again","product_kind":"essence","purpose":"trial","target":{"amount":50000,"measure":"uL","written":"50mL"},"trial_group":"pores again"},"happened_at":"2026-03-04T11:50:00Z","kind":"start","lot":"T1-464-S","offset_min":0,"opens":{"code":"T1-464-S","lot_type":"made","measure":"uL"},"origin":"bench","precision":"exact","recorded_at":"2026-03-04T11:50:00Z","seq":47,"stands_for":47,"v":1}',X'871ED70FD539F305EAFB19E35183E23481CB23F20E88A77AE15FA22799DC5828');
INSERT INTO "entry" VALUES(48,'decant',37,'2026-03-04T11:55:00Z',0,'exact','2026-03-04T11:55:00Z','bench',NULL,'AB',NULL,48,NULL,'{"by":"AB","facts":{"drawn":{"amount":180000,"measure":"uL","written":"180mL"},"heel":{"amount":10000,"measure":"uL","written":"10mL"}},"happened_at":"2026-03-04T11:55:00Z","kind":"decant","level":{"amount":180000,"lot":"TRL-001-2"},"lot":"TRL-001-2","offset_min":0,"origin":"bench","precision":"exact","recorded_at":"2026-03-04T11:55:00Z","seq":48,"stands_for":48,"v":1}',X'0AB851601AE7D96757065173EDCFA5A839936E78370395E7203A6413687B33A2');
INSERT INTO "entry" VALUES(49,'measure',37,'2026-03-04T12:00:00Z',0,'exact','2026-03-04T12:00:00Z','bench',NULL,'AB',NULL,49,NULL,'{"by":"AB","facts":{"reading_micro":95500000,"temp_mdegc":20000,"unit":"%","what":"abv","written":"95.5"},"happened_at":"2026-03-04T12:00:00Z","kind":"measure","lot":"TRL-001-2","offset_min":0,"origin":"bench","precision":"exact","recorded_at":"2026-03-04T12:00:00Z","seq":49,"stands_for":49,"v":1}',X'C15C23A24EC239EBA3DC0BB91B20673903ECA9CD647AC547822796084A38B4D5');
INSERT INTO "entry" VALUES(50,'count',13,'2026-03-04T12:05:00Z',0,'exact','2026-03-04T12:05:00Z','bench',NULL,'AB',NULL,50,'the tap dripped','{"by":"AB","facts":{"amount":{"amount":96000000,"measure":"uL","written":"96L"}},"happened_at":"2026-03-04T12:05:00Z","kind":"count","level":{"amount":96000000,"lot":"WTR-002-Y"},"lot":"WTR-002-Y","offset_min":0,"origin":"bench","precision":"exact","reason":"the tap dripped","recorded_at":"2026-03-04T12:05:00Z","seq":50,"stands_for":50,"v":1}',X'DA6E0602B166B175B6EAC8642B9BA923DB1F734771FDC945C3E84CB33FE3E970');
INSERT INTO "entry" VALUES(51,'labels',32,'2026-03-04T12:10:00Z',0,'exact','2026-03-04T12:10:00Z','bench',NULL,'AB',NULL,51,NULL,'{"by":"AB","facts":{"printed":20,"spoiled":1,"used":15},"happened_at":"2026-03-04T12:10:00Z","kind":"labels","lot":"BOS-001-S","offset_min":0,"origin":"bench","precision":"exact","recorded_at":"2026-03-04T12:10:00Z","seq":51,"stands_for":51,"v":1}',X'F46EA865B53AF147F8BF53C1CE1DB2733887F1D7C0A64EFBF699173EB4BD9C54');
INSERT INTO "entry" VALUES(52,'cases',32,'2026-03-04T12:15:00Z',0,'exact','2026-03-04T12:15:00Z','bench',NULL,'AB',NULL,52,NULL,'{"by":"AB","facts":{"count":1,"first_case":1,"holds":2},"happened_at":"2026-03-04T12:15:00Z","kind":"cases","lot":"BOS-001-S","offset_min":0,"origin":"bench","precision":"exact","recorded_at":"2026-03-04T12:15:00Z","seq":52,"stands_for":52,"v":1}',X'B1D76F10F35924489C7A61EFC2359C0C582B888D3749D09F9D5DC56C7E892F53');
INSERT INTO "entry" VALUES(53,'house',NULL,'2026-03-04T12:20:00Z',0,'exact','2026-03-04T12:20:00Z','bench',NULL,'AB',NULL,53,NULL,'{"by":"AB","facts":{"articles":[{"gtin":"09521234543213","product":"Orange syrup","size":{"amount":250000,"measure":"uL","written":"250 mL"}}],"currency":"EUR","fluid_ounce":"US","gln":"9521234000006","name":"Quayside Essences","time_zone":"Europe/Dublin"},"happened_at":"2026-03-04T12:20:00Z","kind":"house","offset_min":0,"origin":"bench","precision":"exact","recorded_at":"2026-03-04T12:20:00Z","seq":53,"stands_for":53,"v":1}',X'EF4A910EFD462D8321FB82E445F4E98A67007DEDE53A556CD2BAD88948392892');
INSERT INTO "entry" VALUES(54,'house',NULL,'2026-03-04T12:25:00Z',0,'exact','2026-03-04T12:25:00Z','bench',NULL,'AB',NULL,54,NULL,'{"by":"AB","facts":{"articles":[{"gtin":"09521234543213","product":"Orange syrup","size":{"amount":250000,"measure":"uL","written":"250 mL"}}],"company_prefix":"9521234","currency":"EUR","fluid_ounce":"US","gln":"9521234000006","name":"Quayside Essences","time_zone":"Europe/Dublin"},"happened_at":"2026-03-04T12:25:00Z","kind":"house","offset_min":0,"origin":"bench","precision":"exact","recorded_at":"2026-03-04T12:25:00Z","seq":54,"stands_for":54,"v":1}',X'1776E3D65FD624FDB4EEB2A818A2C6600E43AE9E4D8D207250DF7BC4E896C491');
INSERT INTO "entry" VALUES(55,'cases',32,'2026-03-04T12:30:00Z',0,'exact','2026-03-04T12:30:00Z','bench',NULL,'AB',NULL,55,NULL,'{"by":"AB","facts":{"company_prefix":"9521234","count":2,"first_case":2,"holds":2},"happened_at":"2026-03-04T12:30:00Z","kind":"cases","lot":"BOS-001-S","offset_min":0,"origin":"bench","precision":"exact","recorded_at":"2026-03-04T12:30:00Z","seq":55,"stands_for":55,"v":1}',X'639C209CAB247D0DAEBFBD263F62814B77B7C0E890F9EAB5B0E1108639483241');
INSERT INTO "entry" VALUES(56,'note',NULL,'2026-03-04T12:35:00Z',0,'exact','2026-03-04T12:35:00Z','bench',NULL,'AB',NULL,56,NULL,'{"by":"AB","facts":{"text":"The still is out of order."},"happened_at":"2026-03-04T12:35:00Z","kind":"note","offset_min":0,"origin":"bench","precision":"exact","recorded_at":"2026-03-04T12:35:00Z","seq":56,"stands_for":56,"v":1}',X'3B3E72343FACF504116E62F4CD4A8C347264312E9A960DD6247374B3E540D1C1');
INSERT INTO "entry" VALUES(57,'strike',NULL,'2026-03-04T12:40:00Z',0,'exact','2026-03-04T12:40:00Z','bench',NULL,'AB',56,56,'the wrong book','{"by":"AB","corrects":56,"facts":{},"happened_at":"2026-03-04T12:40:00Z","kind":"strike","offset_min":0,"origin":"bench","precision":"exact","reason":"the wrong book","recorded_at":"2026-03-04T12:40:00Z","seq":57,"stands_for":56,"v":1}',X'DD3ED1CFE57E67AFF033517542288A84D9E9C707F906FF89B4A01F660F0D63A0');
INSERT INTO "entry" VALUES(58,'add',37,'2026-03-04T12:45:00Z',0,'exact','2026-03-04T12:45:00Z','bench',NULL,'AB',NULL,58,'the scale was reset','{"by":"AB","facts":{"added_as":"ingredient","amount":{"amount":2000000,"measure":"uL","written":"2L"},"source":"SOO-001-3"},"happened_at":"2026-03-04T12:45:00Z","kind":"add","lot":"TRL-001-2","offset_min":0,"origin":"bench","postings":[{"given":2000000,"source":"SOO-001-3","taken":2000000,"target":"TRL-001-2"}],"precision":"exact","reason":"the scale was reset","recorded_at":"2026-03-04T12:45:00Z","seq":58,"stands_for":58,"v":1}',X'436D63A459459CCD6428CFBEB05ACD6BB67774FA60B925043E0D6D27D1035100');
INSERT INTO "entry" VALUES(59,'deviation',37,'2026-03-04T12:45:00Z',0,'exact','2026-03-04T12:45:00Z','bench',NULL,'AB',NULL,59,'the scale was reset','{"by":"AB","facts":{"about":58,"rule":"on hand","text":"2 L is more than is there of SOO-001-3: the book says 469.231 mL."},"happened_at":"2026-03-04T12:45:00Z","kind":"deviation","lot":"TRL-001-2","offset_min":0,"origin":"bench","precision":"exact","reason":"the scale was reset","recorded_at":"2026-03-04T12:45:00Z","seq":59,"stands_for":59,"v":1}',X'AFF5DA03BC930840BFE829CACDFA82F4A5FD9836A5667B08B71428A6ED4AE9DA');
INSERT INTO "entry" VALUES(60,'check',37,'2026-03-04T12:50:00Z',0,'exact','2026-03-04T12:50:00Z','bench',NULL,'AB',NULL,60,NULL,'{"by":"AB","facts":{"about":51,"words":"Read again."},"happened_at":"2026-03-04T12:50:00Z","kind":"check","lot":"TRL-001-2","offset_min":0,"origin":"bench","precision":"exact","recorded_at":"2026-03-04T12:50:00Z","seq":60,"stands_for":60,"v":1}',X'BDDA43AC0442514EA0EE87118A166F14B252A34FE97D971D0839EEB47E2186A8');
INSERT INTO "entry" VALUES(61,'clean',NULL,'2026-03-04T12:55:00Z',0,'exact','2026-03-04T12:55:00Z','bench',NULL,'AB',NULL,61,NULL,'{"by":"AB","facts":{"how":"Hot water","last_held":"Orange essence","vessel":"Demijohn 2"},"happened_at":"2026-03-04T12:55:00Z","kind":"clean","offset_min":0,"origin":"bench","precision":"exact","recorded_at":"2026-03-04T12:55:00Z","seq":61,"stands_for":61,"v":1}',X'8472E59634B6B27A9429C2DCACC164E0D88F092BDBAB1CA41BC41EBA80022FBC');
INSERT INTO "entry" VALUES(62,'equipment',NULL,'2026-03-04T13:00:00Z',0,'exact','2026-03-04T13:00:00Z','bench',NULL,'AB',NULL,62,NULL,'{"by":"AB","facts":{"name":"Scale","words":"Set to zero with the 200 g weight."},"happened_at":"2026-03-04T13:00:00Z","kind":"equipment","offset_min":0,"origin":"bench","precision":"exact","recorded_at":"2026-03-04T13:00:00Z","seq":62,"stands_for":62,"v":1}',X'DBEBCC8F57113FEB4F9A045E13FD6EDE82F81D64D4B629C0E94FDFD54FBC1CA0');
INSERT INTO "entry" VALUES(63,'formula',NULL,'2026-03-04T13:05:00Z',0,'exact','2026-03-04T13:05:00Z','bench',NULL,'AB',NULL,63,NULL,'{"by":"AB","facts":{"basis":{"amount":1000000,"measure":"uL","written":"1L"},"code":"orange-essence","keeping":[{"days":540,"opened_days":180,"storage":"cool and dark"}],"lines":[{"amount":{"amount":50000,"measure":"mg","written":"50g"},"material":"orange-oil","tolerance_mpct":2000}],"prepared_by":"AB","product":"Orange essence","product_kind":"essence","steps":[{"minutes_min":2880,"verb":"rest"},{"pore_max_nm":25000,"verb":"filter"}],"version":1},"happened_at":"2026-03-04T13:05:00Z","kind":"formula","offset_min":0,"origin":"bench","precision":"exact","recorded_at":"2026-03-04T13:05:00Z","seq":63,"stands_for":63,"v":1}',X'C835570FAD887607EED284EEC83BD715F519274C84B33C53B46481179F9F8C41');
INSERT INTO "entry" VALUES(64,'withdrawal',NULL,'2026-03-04T13:10:00Z',0,'exact','2026-03-04T13:10:00Z','bench',NULL,'AB',NULL,64,'the yield was never reached','{"by":"AB","facts":{"code":"orange-essence","version":1},"happened_at":"2026-03-04T13:10:00Z","kind":"withdrawal","offset_min":0,"origin":"bench","precision":"exact","reason":"the yield was never reached","recorded_at":"2026-03-04T13:10:00Z","seq":64,"stands_for":64,"v":1}',X'FF7BC6D01544977464F082761C7C3C9AFA44DB29754FB0E8CA73C80F2B4E92B8');
INSERT INTO "entry" VALUES(65,'party',NULL,'2026-03-04T13:15:00Z',0,'exact','2026-03-04T13:15:00Z','bench',NULL,'AB',NULL,65,NULL,'{"by":"AB","facts":{"code":"P1","commitment":"da6ec9c3190ae03f23dff86e771a561f3947a5dc41782f4e190dd3ef35b5937b"},"happened_at":"2026-03-04T13:15:00Z","kind":"party","offset_min":0,"origin":"bench","precision":"exact","recorded_at":"2026-03-04T13:15:00Z","seq":65,"stands_for":65,"v":1}',X'D6F1B56E4729BA4C47393EDBF923D22D23464B82BFFAABC9D689C77E5637A5BE');
INSERT INTO "entry" VALUES(66,'party',NULL,'2026-03-04T13:20:00Z',0,'exact','2026-03-04T13:20:00Z','bench',NULL,'AB',NULL,66,NULL,'{"by":"AB","facts":{"code":"P2","commitment":"986bf70f2c811182e0e7d20408eea63f796a0d98bd43e94dde9974b61213e3d9"},"happened_at":"2026-03-04T13:20:00Z","kind":"party","offset_min":0,"origin":"bench","precision":"exact","recorded_at":"2026-03-04T13:20:00Z","seq":66,"stands_for":66,"v":1}',X'83682F70F7B9D89CF89AC64006231CC43389CAA2052D95B78AF972C03D052CD9');
INSERT INTO "entry" VALUES(67,'forget',NULL,'2026-03-04T13:25:00Z',0,'exact','2026-03-04T13:25:00Z','bench',NULL,'AB',NULL,67,'he asked for it','{"by":"AB","facts":{"entries":[{"entry":66,"is_kept":false}],"party":"P2"},"happened_at":"2026-03-04T13:25:00Z","kind":"forget","offset_min":0,"origin":"bench","precision":"exact","reason":"he asked for it","recorded_at":"2026-03-04T13:25:00Z","seq":67,"stands_for":67,"v":1}',X'ABE1B16E3022BAFA1689FC6A1B1755B272C116E1D4AF13A6716A2832E2C914D2');
INSERT INTO "entry" VALUES(68,'material',NULL,'2026-03-04T13:30:00Z',0,'exact','2026-03-04T13:30:00Z','bench',NULL,'AB',NULL,68,NULL,'{"by":"AB","facts":{"allergens":"none","code":"sugar","food_grade":"unknown","name":"Sugar","names":[{"language":"de","name":"Zucker"}],"sort":"sugar"},"happened_at":"2026-03-04T13:30:00Z","kind":"material","offset_min":0,"origin":"bench","precision":"exact","recorded_at":"2026-03-04T13:30:00Z","seq":68,"stands_for":68,"v":1}',X'DC97D0B27F83352130D4C20DDF51864B0FA86DD73F000DCDA6076F57A6C05FBE');
INSERT INTO "entry" VALUES(69,'limit',NULL,'2026-03-04T13:35:00Z',0,'exact','2026-03-04T13:35:00Z','bench',NULL,'AB',NULL,69,NULL,'{"by":"AB","facts":{"basis":"as-sold","bound":"at-most","citation":"21 CFR 189.180, read again","code":"us-safrole","known_by":"read","place":"US","says":"added safrole, oil of sassafras, isosafrole or dihydrosafrole makes a food adulterated","since":"1960-12-03","substance":"safrole","unit":"mg/kg","value_micro":0},"happened_at":"2026-03-04T13:35:00Z","kind":"limit","offset_min":0,"origin":"bench","precision":"exact","recorded_at":"2026-03-04T13:35:00Z","seq":69,"stands_for":69,"v":1}',X'15880C87E4CFE16D05543B00D81028FD72FFCF674F96D7F904822F6704D94FEB');
INSERT INTO "entry" VALUES(70,'judge',32,'2026-03-04T13:40:00Z',0,'exact','2026-03-04T13:40:00Z','bench',NULL,'AB',NULL,70,'came back cloudy','{"by":"AB","facts":{"verdict":"recall"},"happened_at":"2026-03-04T13:40:00Z","kind":"judge","lot":"BOS-001-S","offset_min":0,"origin":"bench","precision":"exact","reason":"came back cloudy","recorded_at":"2026-03-04T13:40:00Z","seq":70,"stands_for":70,"v":1}',X'9B34BEAEE7104AD1F72847D73623E582AE6FF36DFC82E30EC54F40D742C4F75D');
INSERT INTO "entry" VALUES(71,'contact',32,'2026-03-04T13:45:00Z',0,'exact','2026-03-04T13:45:00Z','bench',NULL,'AB',NULL,71,NULL,'{"by":"AB","facts":{"party":"P1","reached":"spoken"},"happened_at":"2026-03-04T13:45:00Z","kind":"contact","lot":"BOS-001-S","offset_min":0,"origin":"bench","precision":"exact","recorded_at":"2026-03-04T13:45:00Z","seq":71,"stands_for":71,"v":1}',X'94FB8306841663D24B3032696AE18445F7007A5C4270389A78130631F096BAD1');
INSERT INTO "entry" VALUES(72,'answer',32,'2026-03-04T13:50:00Z',0,'exact','2026-03-04T13:50:00Z','bench',NULL,'AB',NULL,72,NULL,'{"by":"AB","facts":{"complaint":35,"outcome":"replaced","told_by":"AB","told_on":"2026-03-04","words":"two fresh bottles"},"happened_at":"2026-03-04T13:50:00Z","kind":"answer","lot":"BOS-001-S","offset_min":0,"origin":"bench","precision":"exact","recorded_at":"2026-03-04T13:50:00Z","seq":72,"stands_for":72,"v":1}',X'AFC4E1CA286D9ACC526E9BB4CEA10513677CA3FA16B3A1AF3C4F2B49212691AF');
INSERT INTO "entry" VALUES(73,'closing',32,'2026-03-04T13:55:00Z',0,'exact','2026-03-04T13:55:00Z','bench',NULL,'AB',NULL,73,'9 kept to look at','{"by":"AB","facts":{"cause":"the orange oil was old"},"happened_at":"2026-03-04T13:55:00Z","kind":"closing","lot":"BOS-001-S","offset_min":0,"origin":"bench","precision":"exact","reason":"9 kept to look at","recorded_at":"2026-03-04T13:55:00Z","seq":73,"stands_for":73,"v":1}',X'F44C7D16B39FCBDF39338534EED0D2C9C0D20F57D25D32DA16CE8FE3D6680DB0');
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
INSERT INTO "equipment" VALUES(62,'equipment','Scale','Set to zero with the 200 g weight.',NULL,NULL,NULL);
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
INSERT INTO "filter" VALUES(21,'filter',1,'paper',445000,'uL','445mL',430000,'uL','430mL',20000,20000,NULL,NULL,NULL,NULL,NULL,40000,'below-atmosphere',NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL);
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
INSERT INTO "finish" VALUES(24,'finish',448000,'uL','448mL',NULL,NULL,NULL,NULL,NULL);
INSERT INTO "finish" VALUES(31,'finish',3800000,'uL','3.8L',NULL,NULL,NULL,NULL,NULL);
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
INSERT INTO "forecast" VALUES(40,'forecast','orange','yes',96000,73934,84688,95442,0,3000,250,42243,3913,90323,898,NULL,NULL,NULL);
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
INSERT INTO "forget" VALUES(67,'forget','P2',NULL);
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
INSERT INTO "forget_entries" VALUES(67,1,66,0);
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
INSERT INTO "formula" VALUES(63,'formula','orange-essence',1,'Orange essence','essence',1000000,'uL','1L',NULL,NULL,NULL,NULL,NULL,NULL,NULL,'AB',NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL);
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
INSERT INTO "formula_keeping" VALUES(63,1,'cool and dark',540,180,NULL);
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
INSERT INTO "formula_lines" VALUES(63,1,'orange-oil',50000,'mg','50g',2000,NULL,NULL);
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
INSERT INTO "formula_steps" VALUES(63,1,'rest',NULL,2880,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL);
INSERT INTO "formula_steps" VALUES(63,2,'filter',NULL,NULL,NULL,NULL,NULL,25000,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL);
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
INSERT INTO "house" VALUES(1,'house','Quayside Essences','EUR',NULL,NULL,'Europe/Dublin','US',NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL);
INSERT INTO "house" VALUES(53,'house','Quayside Essences','EUR',NULL,NULL,'Europe/Dublin','US',NULL,NULL,NULL,NULL,NULL,NULL,'9521234000006',NULL);
INSERT INTO "house" VALUES(54,'house','Quayside Essences','EUR',NULL,NULL,'Europe/Dublin','US',NULL,NULL,NULL,NULL,NULL,NULL,'9521234000006','9521234');
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
INSERT INTO "house_articles" VALUES(53,1,'Orange syrup','09521234543213',250000,'uL','250 mL');
INSERT INTO "house_articles" VALUES(54,1,'Orange syrup','09521234543213',250000,'uL','250 mL');
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
INSERT INTO "judge" VALUES(25,'judge','release');
INSERT INTO "judge" VALUES(33,'judge','release');
INSERT INTO "judge" VALUES(70,'judge','recall');
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
INSERT INTO "labels" VALUES(51,'labels',20,15,1,NULL,NULL);
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
INSERT INTO "level" VALUES(21,15,430000);
INSERT INTO "level" VALUES(22,15,450000);
INSERT INTO "level" VALUES(24,15,448000);
INSERT INTO "level" VALUES(31,26,3800000);
INSERT INTO "level" VALUES(48,37,180000);
INSERT INTO "level" VALUES(50,13,96000000);
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
INSERT INTO "limit" VALUES(69,'limit','us-safrole','safrole','at-most',0,'mg/kg','as-sold','US','21 CFR 189.180, read again','read','added safrole, oil of sassafras, isosafrole or dihydrosafrole makes a food adulterated','1960-12-03',NULL);
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
INSERT INTO "look" VALUES(23,'look','hazy','neat',NULL,9400,NULL,NULL,NULL,NULL,0,0,0,0,0,NULL);
INSERT INTO "look" VALUES(30,'look','cloudy','neat',NULL,NULL,NULL,NULL,NULL,NULL,0,0,0,0,0,NULL);
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
INSERT INTO "lot" VALUES(9,'SOO-001-3','received','uL');
INSERT INTO "lot" VALUES(10,'NS-001-J','received','uL');
INSERT INTO "lot" VALUES(11,'LMC-001-F','received','mg');
INSERT INTO "lot" VALUES(12,'SGR-002-J','received','mg');
INSERT INTO "lot" VALUES(13,'WTR-002-Y','received','uL');
INSERT INTO "lot" VALUES(14,'LOT-001-X','received','ueach');
INSERT INTO "lot" VALUES(15,'OE-001-5','made','uL');
INSERT INTO "lot" VALUES(26,'OS-002-M','made','uL');
INSERT INTO "lot" VALUES(32,'BOS-001-S','packed','ueach');
INSERT INTO "lot" VALUES(37,'TRL-001-2','made','uL');
INSERT INTO "lot" VALUES(39,'RL-001-3','rinse','uL');
INSERT INTO "lot" VALUES(42,'T1-182-B','made','uL');
INSERT INTO "lot" VALUES(43,'T1-192-7','made','uL');
INSERT INTO "lot" VALUES(44,'T1-944-V','made','uL');
INSERT INTO "lot" VALUES(45,'T1-360-7','made','uL');
INSERT INTO "lot" VALUES(46,'T1-803-M','made','uL');
INSERT INTO "lot" VALUES(47,'T1-464-S','made','uL');
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
INSERT INTO "makeup" VALUES(22,'makeup',450000,'uL','450mL','NS-001-J',20000,'uL','20 mL',NULL);
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
INSERT INTO "material" VALUES(3,'material','orange-oil','Sweet orange oil','oil','expressed',845000,NULL,NULL,'unknown','none',NULL,NULL,NULL,NULL);
INSERT INTO "material" VALUES(4,'material','spirit','Neutral spirit','ethanol',NULL,NULL,NULL,96000,'unknown','none',NULL,NULL,NULL,NULL);
INSERT INTO "material" VALUES(5,'material','carb','Light magnesium carbonate','clarifier',NULL,NULL,NULL,NULL,'unknown',NULL,NULL,NULL,NULL,NULL);
INSERT INTO "material" VALUES(6,'material','sugar','Sugar','sugar',NULL,NULL,NULL,NULL,'unknown','none',NULL,NULL,NULL,NULL);
INSERT INTO "material" VALUES(7,'material','water','water','water',NULL,NULL,NULL,NULL,'unknown',NULL,NULL,NULL,NULL,NULL);
INSERT INTO "material" VALUES(8,'material','b250','b250','bottle',NULL,NULL,NULL,NULL,'unknown',NULL,NULL,NULL,NULL,NULL);
INSERT INTO "material" VALUES(68,'material','sugar','Sugar','sugar',NULL,NULL,NULL,NULL,'unknown','none',NULL,NULL,NULL,NULL);
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
INSERT INTO "material_constituents" VALUES(3,1,'limonene',940000);
CREATE TABLE material_key (
code TEXT NOT NULL,
seq INTEGER NOT NULL,
CONSTRAINT pk_material_key PRIMARY KEY (code),
CONSTRAINT fk_material_key_seq FOREIGN KEY(seq) REFERENCES entry (seq) DEFERRABLE INITIALLY DEFERRED,
CONSTRAINT uq_material_key_seq UNIQUE (seq)
)
WITHOUT ROWID,
STRICT;
INSERT INTO "material_key" VALUES('b250',8);
INSERT INTO "material_key" VALUES('carb',5);
INSERT INTO "material_key" VALUES('orange-oil',3);
INSERT INTO "material_key" VALUES('spirit',4);
INSERT INTO "material_key" VALUES('sugar',6);
INSERT INTO "material_key" VALUES('water',7);
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
INSERT INTO "material_names" VALUES(68,1,'de','Zucker');
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
INSERT INTO "measure" VALUES(49,'measure','abv',95500000,'%','95.5',20000,NULL);
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
INSERT INTO "move" VALUES(34,'move','sale',6000000,'ueach','6','Bridge Street Stall',NULL,NULL);
CREATE TABLE note (
seq INTEGER NOT NULL,
entry_kind TEXT NOT NULL,
text TEXT NOT NULL,
CONSTRAINT pk_note PRIMARY KEY (seq),
CONSTRAINT ck_note_entry_kind CHECK (entry_kind = 'note'),
CONSTRAINT fk_note_seq_entry_kind FOREIGN KEY(seq, entry_kind) REFERENCES entry (seq, kind)
)
STRICT;
INSERT INTO "note" VALUES(56,'note','The still is out of order.');
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
INSERT INTO "party" VALUES(65,'party',NULL,NULL,NULL,NULL,NULL,'P1','da6ec9c3190ae03f23dff86e771a561f3947a5dc41782f4e190dd3ef35b5937b',NULL);
INSERT INTO "party" VALUES(66,'party',NULL,NULL,NULL,NULL,NULL,'P2','986bf70f2c811182e0e7d20408eea63f796a0d98bd43e94dde9974b61213e3d9',NULL);
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
INSERT INTO "person" VALUES(2,'person','AB',NULL,NULL,'ec4bcfedf810ae9f2de531b611efe84c896f3d791055e0ab5fb34f386cf4a118');
CREATE TABLE person_key (
initials TEXT NOT NULL,
seq INTEGER NOT NULL,
CONSTRAINT pk_person_key PRIMARY KEY (initials),
CONSTRAINT fk_person_key_seq FOREIGN KEY(seq) REFERENCES entry (seq) DEFERRABLE INITIALLY DEFERRED,
CONSTRAINT uq_person_key_seq UNIQUE (seq)
)
WITHOUT ROWID,
STRICT;
INSERT INTO "person_key" VALUES('AB',2);
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
INSERT INTO "posting" VALUES(9,1,NULL,9,'supplier',500000,500000);
INSERT INTO "posting" VALUES(10,1,NULL,10,'supplier',5000000,5000000);
INSERT INTO "posting" VALUES(11,1,NULL,11,'supplier',500000,500000);
INSERT INTO "posting" VALUES(12,1,NULL,12,'supplier',25000000,25000000);
INSERT INTO "posting" VALUES(13,1,NULL,13,'supplier',100000000,100000000);
INSERT INTO "posting" VALUES(14,1,NULL,14,'supplier',100000000,100000000);
INSERT INTO "posting" VALUES(16,1,9,15,NULL,29586,29586);
INSERT INTO "posting" VALUES(17,1,11,15,NULL,15000,0);
INSERT INTO "posting" VALUES(18,1,10,15,NULL,420000,420000);
INSERT INTO "posting" VALUES(22,1,10,15,NULL,20000,20000);
INSERT INTO "posting" VALUES(27,1,12,26,NULL,2400000,0);
INSERT INTO "posting" VALUES(28,1,13,26,NULL,2400000,2400000);
INSERT INTO "posting" VALUES(29,1,15,26,NULL,30000,30000);
INSERT INTO "posting" VALUES(32,1,26,32,NULL,3750000,15000000);
INSERT INTO "posting" VALUES(32,2,14,32,NULL,15000000,0);
INSERT INTO "posting" VALUES(34,1,32,NULL,'sale',6000000,0);
INSERT INTO "posting" VALUES(36,1,9,15,NULL,30769,30769);
INSERT INTO "posting" VALUES(38,1,10,37,NULL,200000,200000);
INSERT INTO "posting" VALUES(39,1,10,39,NULL,20000,15000);
INSERT INTO "posting" VALUES(39,2,37,39,NULL,0,0);
INSERT INTO "posting" VALUES(58,1,9,37,NULL,2000000,2000000);
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
INSERT INTO "receipt" VALUES(9,'receipt','orange-oil',500000,'uL','500mL','Harbour Oils','C7731',4800,'2027-06-30',NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL);
INSERT INTO "receipt" VALUES(10,'receipt','spirit',5000000,'uL','5L',NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL);
INSERT INTO "receipt" VALUES(11,'receipt','carb',500000,'mg','500g',NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL);
INSERT INTO "receipt" VALUES(12,'receipt','sugar',25000000,'mg','25kg',NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL);
INSERT INTO "receipt" VALUES(13,'receipt','water',100000000,'uL','100L',NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL);
INSERT INTO "receipt" VALUES(14,'receipt','b250',100000000,'ueach','100',NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL);
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
INSERT INTO "rest" VALUES(19,'rest','macerate','2026-03-02T09:55:00Z',NULL,NULL,NULL,NULL,NULL);
INSERT INTO "rest" VALUES(20,'rest','macerate','2026-03-02T09:55:00Z','2026-03-04T10:00:00Z',19,NULL,NULL,NULL);
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
INSERT INTO "rinse" VALUES(39,'rinse','NS-001-J',20000,'uL','20mL',15000,'uL','15mL','apart');
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
INSERT INTO "start" VALUES(15,'start','Orange essence','essence',480000,'uL','480mL',NULL,NULL,'sale',NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL);
INSERT INTO "start" VALUES(26,'start','Orange syrup','syrup',4000000,'uL','4L',NULL,NULL,'sale',NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL);
INSERT INTO "start" VALUES(37,'start','Trial','essence',1000000,'uL','1L',NULL,NULL,'trial','pores',NULL,NULL,NULL,NULL,NULL,NULL,NULL);
INSERT INTO "start" VALUES(42,'start','pores again','essence',50000,'uL','50mL',NULL,NULL,'trial','pores again',NULL,NULL,NULL,NULL,NULL,41,1);
INSERT INTO "start" VALUES(43,'start','pores again','essence',50000,'uL','50mL',NULL,NULL,'trial','pores again',NULL,NULL,NULL,NULL,NULL,41,2);
INSERT INTO "start" VALUES(44,'start','pores again','essence',50000,'uL','50mL',NULL,NULL,'trial','pores again',NULL,NULL,NULL,NULL,NULL,41,3);
INSERT INTO "start" VALUES(45,'start','pores again','essence',50000,'uL','50mL',NULL,NULL,'trial','pores again',NULL,NULL,NULL,NULL,NULL,41,4);
INSERT INTO "start" VALUES(46,'start','pores again','essence',50000,'uL','50mL',NULL,NULL,'trial','pores again',NULL,NULL,NULL,NULL,NULL,41,5);
INSERT INTO "start" VALUES(47,'start','pores again','essence',50000,'uL','50mL',NULL,NULL,'trial','pores again',NULL,NULL,NULL,NULL,NULL,41,6);
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
INSERT INTO "start_factors" VALUES(37,1,'pore','5');
INSERT INTO "start_factors" VALUES(42,1,'pore','20');
INSERT INTO "start_factors" VALUES(43,1,'pore','20');
INSERT INTO "start_factors" VALUES(44,1,'pore','5');
INSERT INTO "start_factors" VALUES(45,1,'pore','5');
INSERT INTO "start_factors" VALUES(46,1,'pore','20');
INSERT INTO "start_factors" VALUES(47,1,'pore','5');
CREATE TABLE strike (
seq INTEGER NOT NULL,
entry_kind TEXT NOT NULL,
CONSTRAINT pk_strike PRIMARY KEY (seq),
CONSTRAINT ck_strike_entry_kind CHECK (entry_kind = 'strike'),
CONSTRAINT fk_strike_seq_entry_kind FOREIGN KEY(seq, entry_kind) REFERENCES entry (seq, kind)
)
STRICT;
INSERT INTO "strike" VALUES(57,'strike');
CREATE TABLE tree (
height INTEGER NOT NULL,
place INTEGER NOT NULL,
hash BLOB NOT NULL,
CONSTRAINT pk_tree PRIMARY KEY (height, place),
CONSTRAINT ck_tree_node CHECK (height > 0 AND length(hash) = 32)
)
WITHOUT ROWID,
STRICT;
INSERT INTO "tree" VALUES(1,0,X'03462BCA0696E28DA58CAAC75F0FFD40D71C0258C7EE00183076EFDA53ED763F');
INSERT INTO "tree" VALUES(1,1,X'627304308D251699572626BD24FBA5ECB6F0DA0426A7577B85D584EC749F7D7B');
INSERT INTO "tree" VALUES(1,2,X'4B391B6C6397C52092D0DA073B7B973DF291EB5DE827211CBD20B34C7BD79EF5');
INSERT INTO "tree" VALUES(1,3,X'6F5FC4DF162EDFCABF4EE0DEAA3FF0559129050F61A8536936A596C095462334');
INSERT INTO "tree" VALUES(1,4,X'408BBC690047EC64ECC51E2FDFAA2A512594D3BEFF531EE00FE62EAA13112CB5');
INSERT INTO "tree" VALUES(1,5,X'BCF548D3C2D4A6AD9757F4D60BD54094CC82032AAC8A824420CFB0886F2499A6');
INSERT INTO "tree" VALUES(1,6,X'13665969CAC80A0A9EAE9B53274495DFF64494F42F9F28E6A382D157D9C2A706');
INSERT INTO "tree" VALUES(1,7,X'EE2B126D03A28833D146466C33975AFCCB2F7554A0BF638E8F5EE3A5A942F550');
INSERT INTO "tree" VALUES(1,8,X'3530AC3D392C2436EC0C416062EB680CE50E6136CE465BFB7292EF658014B36E');
INSERT INTO "tree" VALUES(1,9,X'7D09E1C0F061D3488816006BF6D7D3E58F3C08CD7D9D6EAD40E5D1377AF0E10C');
INSERT INTO "tree" VALUES(1,10,X'1D14566DDAC46A1ACA25DDAAB3E32D9CF0432032AF50DEF57CDC1B50501B0117');
INSERT INTO "tree" VALUES(1,11,X'6A53185F625361C2193ECB5F7CC786D4A54DD02B034DBD710F006A10BBFB2F8B');
INSERT INTO "tree" VALUES(1,12,X'04A4C9FEAD7B8E1BF88060B0168797AFB579EDCD3CE4C8F733E184AE1F5D0558');
INSERT INTO "tree" VALUES(1,13,X'970E558F0A4934C5E2E09261C0F89E8B4E7C1CC21DC43EF5C647193816590FF7');
INSERT INTO "tree" VALUES(1,14,X'030D5C80BA40E51ED2A5CC2A1682854A5A24258F11CFB35C002E4F36D1A7A713');
INSERT INTO "tree" VALUES(1,15,X'0B39D8DF393262A9A5F2D80113C3DCB250D2C627BF3C30BA8CB626708221C2A4');
INSERT INTO "tree" VALUES(1,16,X'A5E87FD3B7B5FD29708FF8DDAF106A6A637F65A9B9EDB69137EEF87E6B245781');
INSERT INTO "tree" VALUES(1,17,X'1EA6F3DE7D1DA45C06C9A8FC1EBE92B7B9EA317DB060685AC70399B24446AA6E');
INSERT INTO "tree" VALUES(1,18,X'A7B8CA6209F382C07AB71238F8B6133DE86F4F6C54E9AD22A0FF4A2963492C93');
INSERT INTO "tree" VALUES(1,19,X'087D50B8304CC2C4B058020DC54BCDAF21B178B4303A4FDF9EA8513B745EDFBB');
INSERT INTO "tree" VALUES(1,20,X'875E56DF3D789F3313FE1ACF32CE4AA1162F007EBFA50055111E6C88E8B75104');
INSERT INTO "tree" VALUES(1,21,X'94FE321DFDED5B721DEA2F8EC5FB29EA1BEDF4E80D88EEBFE0E30E80766C3541');
INSERT INTO "tree" VALUES(1,22,X'19F991ABEC1FA79E491C5442CD0357D0DE710DF772E232CEC4B9ED072029F932');
INSERT INTO "tree" VALUES(1,23,X'0876862A9AEA0EA639522288D47FB1C27C0AFB3FB63A29B8DB6FED6BA6CD615C');
INSERT INTO "tree" VALUES(1,24,X'90D1CEE889B7D4439420B7B27C1EE0F750ECA229911584B50F33E4242F531F90');
INSERT INTO "tree" VALUES(1,25,X'FAC2349697F8F1BABB8781FD114F42E3CE761F680470B08C4FADC4AE01ABCF58');
INSERT INTO "tree" VALUES(1,26,X'C3289E308FB6D346F9B4F00CAA3748F15FF2EB9FEA7F6B156D8FA15D7AD89115');
INSERT INTO "tree" VALUES(1,27,X'E6D01F8A7DE9BBB1A5139E4D49A705BAF6781E665CA5438AB6173C236D9B8A9E');
INSERT INTO "tree" VALUES(1,28,X'6FB4AEB5B73BFBBDBFB30FCA9F1994626D67D796C2CDC2C51478BB4C9CDBB3E0');
INSERT INTO "tree" VALUES(1,29,X'4FCB77029F4052894A486944B109D211C9AEC452A6B3027000C7AB8FCBD86C14');
INSERT INTO "tree" VALUES(1,30,X'67492758C3089A7E3169E203F6A65DDF68F86043F56D6F9BA0D483E4C6096414');
INSERT INTO "tree" VALUES(1,31,X'9EC94BDE53C1C000BD604D7B825C6DA374FD978F34EBD1B97DAE07888F001178');
INSERT INTO "tree" VALUES(1,32,X'1A707338343C798D27B6BE91D8166DD20248E40078D8A2AF902DF23EB1677255');
INSERT INTO "tree" VALUES(1,33,X'066B97974A7604232C4C7A8F27BC9D78387E460AB6B10DBA8243BC7D4F65B295');
INSERT INTO "tree" VALUES(1,34,X'DA94A7600BEEB657A10126E2FF393618BD1B5EE602639E6D0320AE707D900FC6');
INSERT INTO "tree" VALUES(1,35,X'96EAF9277B08F60B1690F3DEF60CF5C5ED321BB124CC04A5877C20EB1EDB810B');
INSERT INTO "tree" VALUES(2,0,X'E122FADDB316FB046DFF4C66D0CBB7F46E3C56ABCB96FE3C5945A2CED352E8AB');
INSERT INTO "tree" VALUES(2,1,X'6705DA2578C181BB1B0482A95EE5D94AFEDE5EE35A7F4B6B84C40CA3CB7C90EC');
INSERT INTO "tree" VALUES(2,2,X'3269D1FBE5FD44FF53021669BB2BBC7F53511F412BB9F115DDB45D7745C7E2DF');
INSERT INTO "tree" VALUES(2,3,X'1B9AB50553BA64383D3C2BDC1714492342E0FEF60CF85AB484F3A7421DA9177B');
INSERT INTO "tree" VALUES(2,4,X'96F5DD04AD4B62D86E99ACFFD4DC49CE365FF67932C92E2301FFA3BB7CDB6CBC');
INSERT INTO "tree" VALUES(2,5,X'DE39785D52A445236597753DAA7F00879E6FBD7637FCF19AF1B56BA281769C18');
INSERT INTO "tree" VALUES(2,6,X'5F83996D05A9D3A83E0C697324846BFE43C6084290330358A67FF25AC6E0E714');
INSERT INTO "tree" VALUES(2,7,X'03B055D13ADCFF26FF2801272632865D9AA0382086B7AEEE99F4D217839AA351');
INSERT INTO "tree" VALUES(2,8,X'C3E6166C70CA1D08F83C8B34E28553BCB677EDB1C346F6B7E975F0863B60E1CF');
INSERT INTO "tree" VALUES(2,9,X'7C155377A5BCF2DB83E99452B006034CE1EAEF7437BD7E7213B493F1357B17B1');
INSERT INTO "tree" VALUES(2,10,X'ACAED943F1DE67E3374B4C013F4B0A8355BB0CC6E7C7C43082E71B4793D34B6B');
INSERT INTO "tree" VALUES(2,11,X'AEC90BF1E37C8086ACB56A9FC09244D8999253CA9A1D4C00AB6066CA93E57A37');
INSERT INTO "tree" VALUES(2,12,X'BA26EBE8E5C1AEF9D48B93116503A784E8DF20D9169A6C133996A7A0F9DFC639');
INSERT INTO "tree" VALUES(2,13,X'588EF57E3ABF81DB414C9AA4D8B6351F5D563D817B2B4616DC7B553726A08ABD');
INSERT INTO "tree" VALUES(2,14,X'BAC188132843B76DDF5F25A4709072EEC38F4CE93961B1508BBDF9FBE92523C8');
INSERT INTO "tree" VALUES(2,15,X'534D7349F5E64634476F873522DC4AC3D4D773F934780E83BAB59C97AEABCB86');
INSERT INTO "tree" VALUES(2,16,X'F1F7C970131065FF2B163DAE80D737A3BD322105488019DCA1AC9A27FDF86572');
INSERT INTO "tree" VALUES(2,17,X'AF04B8CCB045473983CBB9938D920EC8E5B3BADC9DA511342E429CD422F62C60');
INSERT INTO "tree" VALUES(3,0,X'AE3D106D38E068E0D7A152A36D78471AE245D85D41E8BE2038211B92F0491567');
INSERT INTO "tree" VALUES(3,1,X'5F5F3C0CBB83EE21F7F429F1EA48D90493990AD354B0CF0F5A2A39D7AFCBE1C9');
INSERT INTO "tree" VALUES(3,2,X'E353E3D24942CC79E183FB8B2949B77400DCDE8B84CCFD7E766A4B71D9D828D7');
INSERT INTO "tree" VALUES(3,3,X'1DC7C86864B91454BAC8DF46A64CB806C8AD448D77500FDA1439381F28EED1BA');
INSERT INTO "tree" VALUES(3,4,X'7191F87E0C91C9A16805B91C81C9AF1F4C5551AC7EAD410AE5CE055860BAD0ED');
INSERT INTO "tree" VALUES(3,5,X'F5C5E191DB03354AEEF7ED419A7E54948D3550238F2AEA218A51B28D1764C44B');
INSERT INTO "tree" VALUES(3,6,X'28C13C63860AFDA07A526971DD235ADAEEC31F603286CDB5F58CCEBBDD196AC8');
INSERT INTO "tree" VALUES(3,7,X'F56EFF41563F0E981C4097FF2803CB33798DC47493803504BC85D202732F3988');
INSERT INTO "tree" VALUES(3,8,X'3AAC2B45216917AF77B174FC5E05B0DB3E6492479ACFAA7B0BFF5D2B9378B12A');
INSERT INTO "tree" VALUES(4,0,X'960C39E36CCDA53DB0D2502A77525934B7051D56176686CDD2E5E79A7F030CEF');
INSERT INTO "tree" VALUES(4,1,X'93F9986FDAAC1F25CF24AF6DE87A1F39EDFDF7874E2391583EFCC52F42BC4FF8');
INSERT INTO "tree" VALUES(4,2,X'0DB7314EA5F7E34E73EC3C4D11196EF1D5D13D1EB0954EE6BD5050D464492D76');
INSERT INTO "tree" VALUES(4,3,X'C1CB51083CA8D848291200D80B935E5C2158B199250487798D6312F988EF471C');
INSERT INTO "tree" VALUES(5,0,X'89F0B5F8B14B6EE695E36AD5DE8FD181D2211BF97E542F798453C4AB513BDD88');
INSERT INTO "tree" VALUES(5,1,X'F896C89413F356145EFE8DBEEA99080FD00FB920B72CE33466F3BC2028C069AF');
INSERT INTO "tree" VALUES(6,0,X'88056836437AF8448F8F1C03D3E08F469B6C4160304736BBFAEB72C58FA82E31');
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
INSERT INTO "trial" VALUES(41,'trial','pores again',1,'pores again','essence',50000,'uL','50mL','look','clear','7 d',5000,90000,5000,94000,40,'f93886de38c7052d32ccd758023b2d082cf7d5c16efe5411e3477fe09181f0df',NULL,NULL,2);
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
INSERT INTO "trial_evenings" VALUES(41,1,6);
INSERT INTO "trial_evenings" VALUES(41,2,6);
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
INSERT INTO "trial_factors" VALUES(41,1,'pore','5','20');
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
INSERT INTO "withdrawal" VALUES(64,'withdrawal','orange-essence',1);
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
COMMIT;
