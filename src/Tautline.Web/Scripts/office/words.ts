// The words of the company page, in both languages.
const words = {
  title: ["The company", "La empresa"],
  desk: ["To the desk", "Al escritorio"],
  noServer: ["This page was not served by a Tautline server, or there is no signal.", "Esta página no viene de un servidor Tautline, o no hay señal."],
  again: ["Try again", "Intentar de nuevo"],
  signIn: ["Sign in", "Entrar"],
  signUp: ["Make the company", "Crear la empresa"],
  join: ["Join", "Unirse"],
  joinAs: ["{company} invites you as {role}.", "{company} le invita como {role}."],
  signOut: ["Sign out", "Salir"],
  email: ["E-mail", "Correo"],
  password: ["Password", "Contraseña"],
  newPassword: ["Password, 12 signs or more", "Contraseña, 12 signos o más"],
  name: ["Your name", "Su nombre"],
  person: ["Name", "Nombre"],
  company: ["Name of the company", "Nombre de la empresa"],
  withPasskey: ["Sign in with a passkey", "Entrar con llave de acceso"],
  upPasskey: ["With a passkey instead", "Con una llave de acceso"],
  addPasskey: ["Add a passkey", "Añadir una llave de acceso"],
  passkeyMade: ["The passkey is made.", "La llave de acceso está hecha."],
  which: ["Which company?", "¿Qué empresa?"],
  https: ["Passwords and passkeys are only taken over HTTPS.", "Contraseñas y llaves solo por HTTPS."],
  jobs: ["Jobs", "Trabajos"],
  people: ["People", "Personas"],
  devices: ["Devices", "Aparatos"],
  programs: ["Programs", "Programas"],
  audit: ["What was done", "Qué se hizo"],
  find: ["Find", "Buscar"],
  job: ["Job", "Trabajo"],
  state: ["State", "Estado"],
  progress: ["Posts set", "Postes puestos"],
  fabric: ["Fabric hung", "Malla colgada"],
  problems: ["Problems", "Problemas"],
  conflicts: ["Conflicts", "Conflictos"],
  punch: ["Punch list", "Pendientes"],
  ticket: ["Locate ticket", "Aviso de localización"],
  changed: ["Last word", "Última noticia"],
  open: ["Open", "Abrir"],
  opening: ["Fetching the job…", "Trayendo el trabajo…"],
  noJobs: ["No jobs yet. Open a job, go to Field, Hand over, and send it to the company.", "Aún no hay trabajos. Abra uno, vaya a Campo, Entregar, y envíelo a la empresa."],
  noneFound: ["No job has these words.", "Ningún trabajo tiene estas palabras."],
  runsOut: ["{n}, until {day}", "{n}, hasta {day}"],
  ranOut: ["{n}: ran out {day}", "{n}: venció {day}"],
  link: ["Share a paper", "Compartir un papel"],
  paper: ["Paper", "Papel"],
  days: ["Days", "Días"],
  makeLink: ["Make the link", "Hacer el enlace"],
  once: ["Shown this once:", "Se muestra solo ahora:"],
  role: ["Role", "Papel"],
  since: ["Since", "Desde"],
  end: ["End access", "Quitar acceso"],
  invite: ["Invite", "Invitar"],
  invitations: ["Invitations", "Invitaciones"],
  until: ["Good until", "Vale hasta"],
  withdraw: ["Withdraw", "Retirar"],
  emailMaybe: ["E-mail, if known", "Correo, si lo sabe"],
  shutOut: ["Shut out", "Cerrar"],
  seen: ["Last seen", "Visto"],
  device: ["Device", "Aparato"],
  lost: ["Access of a lost phone ends here. What it holds offline cannot be wiped.", "Aquí se quita el acceso de un teléfono perdido. Lo que guarda sin conexión no se puede borrar."],
  tokens: ["Tokens for programs", "Claves para programas"],
  tokenFor: ["What it is for", "Para qué es"],
  makeToken: ["Make a token", "Hacer una clave"],
  used: ["Last used", "Usado"],
  links: ["Links", "Enlaces"],
  opened: ["Opened", "Abierto"],
  export: ["Export everything", "Exportar todo"],
  account: ["Your account", "Su cuenta"],
  who: ["Who", "Quién"],
  what: ["What", "Qué"],
  when: ["When", "Cuándo"],
  owner: ["owner", "dueño"],
  estimator: ["estimator", "presupuestista"],
  foreman: ["foreman", "capataz"],
  crew: ["crew", "cuadrilla"],
  lead: ["lead", "contacto"],
  quoted: ["quoted", "presupuestado"],
  won: ["won", "ganado"],
  building: ["building", "en obra"],
  done: ["done", "terminado"],
  lostJob: ["lost", "perdido"],
} as const;

export type Word = keyof typeof words;

const spanish = (): boolean => document.documentElement.lang.startsWith("es");

export function say(word: Word, places: Record<string, string> = {}): string {
  return words[word][spanish() ? 1 : 0].replace(/\{(\w+)\}/g, (_, place: string) => places[place] ?? "");
}

/** A state or role as people read it; what is none of ours stays as it is. */
export function named(name: string): string {
  const key = name === "lost" ? "lostJob" : name;
  return key in words ? say(key as Word) : name;
}

export function day(time: string): string { return new Date(time).toLocaleDateString(document.documentElement.lang, { dateStyle: "medium" }); }

export function moment(time: string): string { return new Date(time).toLocaleString(document.documentElement.lang, { dateStyle: "medium", timeStyle: "short" }); }
