/** Words the rules of intents look for; a misspelled word is put right toward these. */
export const CUE_WORDS: readonly string[] =
  `many much left bars need make macros macro nutrition nutritional protein calories carbs carbohydrate sodium sugar fiber potassium calcium
  magnesium allergens allergen allergy allergies allergic contains contain traces substitute substitution substitutes replace replacement
  replacing swap swapping instead alternative alternatives convert conversion measure tablespoon teaspoon grams ounces recipe recipes ingredient
  ingredients scale scaling batch batches inventory stock fridge freezer refrigerator schedule reminder reminders remind snooze cancelled
  canceled postponed rescheduled shopping grocery groceries budget price prices expensive temperature thermometer degrees
  expired expires expire expiring leftover counted remaining served tossed discarded discard spoiled threw thrown trashed dumped supplement
  supplements certified banned legal permitted prohibited travel travelling traveling athletes players vegetarian vegan gluten dairy lactose
  intolerant intolerance celiac coeliac portion portions pieces servings sticky crumbly mistake accident forgot yesterday tomorrow saturday
  sunday monday tuesday wednesday thursday friday morning volleyball basketball soccer football softball baseball lacrosse wrestling
  rebalance balance increase decrease reduce trace recall cinnamon banana peanut almond butter honey yogurt chocolate granola smoothie
  smoothies parfait parfaits muffins overnight cherry cherries blueberry sunflower coconut vanilla powder creatine caffeine opponent
  departure kickoff production delivery received import calendar unopened thawed frozen shelf
  tongue tingling itchy lips airway allergic breathe breath breathing throat choking swelling swollen swell hives anaphylaxis anaphylactic epipen injector seizure seizures unconscious
  collapsed collapse collapsing fainted fainting faint suicidal suicide overdose overdosed poisoned poisoning ambulance emergency heatstroke stroke
  wheezing reaction responding unresponsive swallowed bleeding airway epinephrine convulsing convulsion paralyzed drowning electrocuted
  concussion concussed diabetic diabetes insulin dizzy lightheaded nauseous nausea vomiting diarrhea pregnant pregnancy period periods fracture injury injured
  medication medications medicine ibuprofen antidepressant antibiotics prescription dosage dose doses ferritin anemia anemic bloodwork
  anorexia anorexic bulimia bulimic bingeing binging purging purge laxative laxatives eating disorder underweight overweight obese skinny
  depressed depression anxiety diagnosis diagnose symptoms symptom sprained torn surgery kidney cholesterol thyroid migraine headache
  weight weigh lose losing bodyfat fasting diet dieting starving stomach rash fever infection blood pressure`
    .split(/\s+/)
    .filter((word) => word !== '');
