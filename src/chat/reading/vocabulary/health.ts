/** Words of illness, of the body's inside and of treatment that no kitchen uses: one of them is enough. */
export const HEALTH: ReadonlySet<string> = new Set(
  `syndrome virus bacterial infection infections infected illness illnesses disorder disorders
  menopause perimenopause hysterectomy ovaries ovary uterus pcos endometriosis cyst cysts tumor tumour cancer chemo radiation
  biopsy mammogram ultrasound mri xray ekg ecg eeg endoscopy colonoscopy catheter dialysis transfusion immunotherapy vaccine vaccines vaccinated
  vaccination antiviral antifungal antibiotic antibiotics antihistamine antihistamines antidepressant antidepressants antipsychotic
  benzodiazepine xanax ativan klonopin valium ambien lunesta trazodone wellbutrin prozac zoloft lexapro cymbalta effexor lithium adderall
  ritalin vyvanse concerta strattera percocet vicodin oxycodone hydrocodone oxycontin morphine fentanyl codeine tramadol opioid opioids
  narcotic narcotics naloxone gabapentin cyclobenzaprine flexeril robaxin toradol meloxicam diclofenac celebrex naproxen ibuprofen
  prednisone cortisone hydrocortisone corticosteroid albuterol singulair flonase claritin zyrtec allegra benadryl mucinex sudafed
  dayquil nyquil robitussin tamiflu paxlovid zofran phenergan dramamine imodium pepto tums pepcid omeprazole nexium prilosec miralax colace
  dulcolax senna metamucil gasx statin statins lipitor metformin ozempic wegovy mounjaro semaglutide levothyroxine synthroid
  spironolactone propranolol lisinopril metoprolol warfarin eliquis xarelto accutane isotretinoin retinol doxycycline amoxicillin azithromycin
  bladder bowel bowels rectum intestine intestines intestinal esophagus pancreas spleen appendix gallbladder prostate testicle testicles
  urine urinary kidneys renal hepatic cardiac cardiologist dermatologist neurologist gynecologist urologist orthopedist orthopedic
  podiatrist chiropractor physiotherapist psychiatrist psychologist therapist counselor pediatrician dentist orthodontist surgeon
  hernia hernias abscess cellulitis sepsis eczema psoriasis acne rosacea dandruff lice scabies ringworm shingles chickenpox measles mumps
  mono strep covid flu norovirus giardia malaria lyme tetanus rabies hepatitis herpes chlamydia gonorrhea sti uti
  anemia anemic anaemia ferritin hemoglobin hematocrit platelets leukemia lymphoma hemophilia crp tsh a1c cortisol estrogen progesterone hormone hormones hormonal
  concussion concussed migraine migraines vertigo tinnitus epilepsy epileptic parkinsons alzheimers dementia autism autistic aspergers adhd ocd ptsd bipolar
  schizophrenia depression depressed suicidal anxiety insomnia narcolepsy apnea snoring nightmares burnout grieving
  lupus fibromyalgia arthritis gout scoliosis osteoporosis osteopenia rickets scurvy sciatica bursitis carpal bunion bunions
  spasm spasms cramping inflammation inflamed edema lymph lymphedema jaundice numbness tremor tremors
  constipation constipated diarrhea nausea nauseous vomiting heartburn reflux gerd ibs crohns colitis hemorrhoids indigestion bloating bloated
  trots squirts gastritis ulcer ulcers hypoglycemia hyperglycemia diabetes diabetic prediabetic prediabetes ketoacidosis
  pregnant pregnancy trimester miscarriage postpartum breastfeeding lactating ovulation ovulating menstrual menstruation menstruating amenorrhea pms
  sprain sprained fracture fractured dislocated acl mcl meniscus labrum hamstring achilles tendon tendons ligament ligaments whiplash
  crutches splint sling sutures stitches physio surgery surgeries surgical anesthesia postop prosthetic
  toothache cavities cavity dentures gingivitis tonsils tonsillectomy laryngitis bronchitis pneumonia asthma asthmatic inhaler phlegm sinusitis
  sneezing coughing cough sniffles fever feverish malaise lethargic fatigued dizzy dizziness lightheaded woozy queasy unwell
  palpitations arrhythmia murmur hypertension hypotension triglycerides angina pacemaker
  anorexia anorexic bulimia bulimic binge bingeing binging purge purging orexia laxative laxatives diuretic diuretics underweight overweight obese obesity bmi
  vape vaping vapes hungover hangover`
    .split(/\s+/)
    .filter((word) => word !== ''),
);

/** Endings that only names of illnesses and operations have. */
const ILLNESS =
  /^[a-z]{3,}(?:itis|osis|emia|aemia|opathy|thyroidism|algia|ectomy|otomy|rrhea|rrhoea|phagia|sclerosis|dystrophy|uria|penia)$/;
const NO_ILLNESS =
  /^(?:academia|bohemia|osmosis|metamorphosis|mitosis|meiosis|hypnosis|homeopathy|naturopathy|nostalgia|anatomy)$/;

/** A word of illness or treatment, by the list or by its ending. */
export const isHealthWord = (word: string): boolean =>
  HEALTH.has(word) || (ILLNESS.test(word) && !NO_ILLNESS.test(word));
