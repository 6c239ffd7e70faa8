export const CALL_FOR_HELP: readonly RegExp[] = [
  / (?:call|dial|calling|called|need|get) (?:[a-z]+ ){0,3}(?:911|999|112|ambulance|paramedics?|ems) | ambulance |^ (?:911|999|112) (?!bars?|bites?)/,
  /^ (?:[a-z]+ ){0,4}(?:emergency|emergencia|sos) (?:[a-z]+ ){0,4}$| (?:an|its an|is an|this is an|medical|real|have an|its|life threatening) emergency | emergency (?:help|now|please|in|at|room) | sos /,
  / (?:call|calling|called|get|need|send|where is|wheres|find) (?:[a-z]+ ){0,2}(?:911|999|112|an ambulance|ambulance|paramedics?|ems|medic|medics) | (?:go|going|went|take|taking|took|rush\w*|get) (?:[a-z]+ ){0,3}(?:to )?(?:the )?(?:er|emergency room|hospital) (?!for|visit bill)/,
  / (?:its|this is|is|have|got|is this) an? (?:real |medical |actual )?emergency | life threatening | (?:first aid|medical help|help) (?:now|asap|immediately|right now|fast|quick) (?!with|on)/,
  / (?:me estoy|se est[a-z]) (?:ahogando|muriendo|asfixiando) | (?:no respira|desmay\w*|convulsion\w*|inconsciente|envenen\w*|ambulancia|quiero morir|matarme|suicid\w*|sangrando mucho) /,
];
