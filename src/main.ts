process.stdout.write('Batchbell\n');
