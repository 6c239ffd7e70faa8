import { NEEDS } from '../../nutrition/allergens.ts';
import { needName } from '../need-words.ts';
import { TEAM_ROLES } from '../roles.ts';
import type { Form } from './form.ts';
import { initialOf, listIn, textIn } from './values.ts';

/** What the person who fills it in avoids: seen, changed and deleted by that person. */
export const needs: Form = {
  id: 'needs',
  title: 'What I avoid',
  submit: 'Keep it',
  roles: TEAM_ROLES,

  async page({ kitchen, request }, given) {
    const { workspace, who } = request.asker;
    const known = await kitchen.rosters(workspace).get(who.toUpperCase());
    return {
      intro: known
        ? 'This is what is kept of you. You and the staff see it; plans show counts only.'
        : 'Nothing is kept of you yet. You and the staff will see it; plans show counts only.',
      fields: [
        {
          kind: 'choices',
          id: 'avoid',
          label: 'Allergies, and what I do not eat',
          hint: 'Coeliac disease: choose gluten. Vegan: choose animal products.',
          optional: true,
          options: NEEDS.map((need) => ({ value: need, label: needName(need) })),
          initial: given.avoid === undefined ? (known?.avoid ?? []) : listIn(given, 'avoid'),
        },
        {
          kind: 'line',
          id: 'foods',
          label: 'Other foods',
          placeholder: 'kiwi, banana',
          hint: 'With commas between.',
          optional: true,
          ...initialOf(given, 'foods', known?.foods.join(', ')),
        },
        ...(known
          ? [
              {
                kind: 'choices' as const,
                id: 'forget',
                label: 'Or delete it',
                optional: true as const,
                options: [{ value: 'forget', label: 'Forget everything kept of me' }],
                initial: listIn(given, 'forget'),
              },
            ]
          : []),
      ],
    };
  },

  read(values) {
    if (listIn(values, 'forget').length > 0) {
      return {
        text: 'delete my needs',
        reading: { intent: 'allergens', slots: { scope: 'roster', action: 'forget', who: 'me' } },
      };
    }
    const avoid = NEEDS.filter((need) => listIn(values, 'avoid').includes(need));
    const foods = (textIn(values, 'foods') ?? '')
      .split(/[,;\n]/)
      .map((food) => food.trim())
      .filter((food) => food !== '');
    const isNone = avoid.length + foods.length === 0;
    return {
      text: 'my needs',
      reading: {
        intent: 'allergens',
        slots: {
          scope: 'roster',
          action: 'set',
          who: 'me',
          only: true,
          avoid,
          foods,
          ...(isNone ? { none: true } : {}),
        },
      },
    };
  },

  blames: () => 'foods',
};
