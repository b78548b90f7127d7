/** The list of mounds and their screens. */
export default function Start() {
  return <main class="start" />;
}
