import Database from 'libsql';
import path from 'node:path';

/**
 * Takes a data folder for this program alone. The lock is the kernel's and goes with the process, however that ends; it lies
 * on a file of its own, so that the log itself can be read beside a running server.
 * @returns what gives the folder back
 * @throws with code SQLITE_BUSY while another program has it
 */
export function takeFolder(folder: string): () => void {
  const lock = new Database(path.join(folder, 'in-use'));
  try {
    lock.exec('BEGIN EXCLUSIVE');
  } catch (error) {
    lock.close();
    throw error;
  }
  return () => {
    lock.exec('ROLLBACK');
    lock.close();
  };
}
