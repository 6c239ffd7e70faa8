/** Words that a sign of danger hangs on: the nearest of these is looked for by sound before any other word. */
export const URGENT_WORDS: readonly string[] =
  `breathe breath breathing breathes choke choking choked throat tongue lips swelling swollen swell swells puffy puffing puffed ballooning hives itchy itching tingling wheezing
  anaphylaxis anaphylactic allergic allergy reaction epipen epinephrine injector airway
  unconscious unresponsive responding collapsed collapsing collapse fainted fainting passed seizure seizures seizing seized seizes convulsions convulsing
  emergency ambulance paramedics heatstroke confused delirious disoriented vomiting dizzy sweating
  suicide suicidal killing myself overdose overdosed poisoned poison swallowed bleach sanitizer bleeding stroke chest electrocuted drowning
  concussion laxatives diuretic anorexia anorexic bulimia bulimic purging purge bingeing starving starve restricting menstruation fracture
  diarrhea nausea nauseous pregnant diabetes diabetic insulin ibuprofen tylenol acetaminophen antibiotics prescription medication diagnosis
  depressed depression anxiety ferritin anemia anemic hemoglobin dehydrated hamstring achilles migraine`
    .split(/\s+/)
    .filter((word) => word !== '');
